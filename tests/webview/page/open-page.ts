import { afterAll } from 'vitest';
import type { JobView } from '../../../extension/protocol/views.ts';
import { App } from '../../../webview/app.ts';
import { FakeHost } from './fake-host.ts';

/** The page with a made-up job of 24 parts behind it, and a person's hands on it. */
export interface OpenPage {
  readonly app: App;
  readonly host: FakeHost;
  readonly entry: HTMLTextAreaElement;
  /** What VS Code would keep of the page. */
  readonly kept: () => unknown;
}

/** Lets answers come and delayed parts be painted. */
export async function settle(): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 60));
}

// The document goes with its file of tests: what a page has put off comes before that, first what waits
// for an answer, then what is told of it.
afterAll(async () => {
  document.body.dispatchEvent(new Event('pointerdown', { bubbles: true }));
  await settle();
  await settle();
});

/** Opens the page afresh, with what an earlier one kept. */
export async function openPage(
  state: JobView['state'] = 'ready',
  keptBefore?: unknown,
): Promise<OpenPage> {
  let kept = keptBefore;
  const app: App = new App({
    post: (message) => {
      host.receive(message);
    },
    kept,
    keep: (next) => {
      kept = next;
    },
  });
  const host = new FakeHost(
    (message) => {
      app.receive(message);
    },
    24,
    state,
  );
  document.body.replaceChildren(app.root);
  app.grid.view.resized(900, 600);
  host.receive({ type: 'ready' });
  await settle();
  return { app, host, entry: app.grid.editor.entry, kept: () => kept };
}

/** Puts the cursor on a cell of the parts. */
export function goTo(page: OpenPage, id: string, column: string): void {
  page.app.goTo({ table: 'part', id, occurrence: 0, column });
}

/** Presses `Ctrl+Shift+K` on the element that has the focus. */
export function press(keys: string): void {
  const parts = keys.split('+');
  const key = parts.at(-1) ?? '';
  (document.activeElement ?? document.body).dispatchEvent(
    new KeyboardEvent('keydown', {
      key,
      ctrlKey: parts.includes('Ctrl'),
      shiftKey: parts.includes('Shift'),
      altKey: parts.includes('Alt'),
      bubbles: true,
      cancelable: true,
    }),
  );
}

/** Types into whatever has the focus, replacing what it holds, as typing over a selection does. */
export function type(text: string): void {
  const target = document.activeElement;
  if (!(target instanceof HTMLTextAreaElement)) throw new Error('Nothing to type into.');
  target.value = text;
  target.setSelectionRange(text.length, text.length);
  target.dispatchEvent(new Event('input', { bubbles: true }));
}

/** What the grid shows of a cell. */
export function shown(id: string, column: string): string {
  return document.querySelector(`[data-cell="${id}/${column}"]`)?.textContent ?? '';
}

/** Name of the cell under the cursor. */
export function active(): string {
  return document.querySelector<HTMLElement>('.cell.active')?.dataset['cell'] ?? '';
}

/** Clicks the first element that a selector finds. */
export function click(selector: string): void {
  document.querySelector<HTMLElement>(selector)?.click();
}

/** Copies, cuts or pastes at the cursor. */
export function clipboard(
  name: 'copy' | 'cut' | 'paste',
  data = new Map<string, string>(),
): Map<string, string> {
  const event = new Event(name, { bubbles: true, cancelable: true });
  Object.defineProperty(event, 'clipboardData', {
    value: {
      getData: (kind: string) => data.get(kind) ?? '',
      setData: (kind: string, text: string) => data.set(kind, text),
    },
  });
  document.querySelector('.cell-entry')?.dispatchEvent(event);
  return data;
}
