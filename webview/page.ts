import { element } from './dom.ts';
import { button } from './form.ts';
import type { Tabs } from './panes/tabs.ts';
import { scrollStrip } from './scroll-strip.ts';

type PaneKey =
  | 'bill'
  | 'price'
  | 'options'
  | 'checks'
  | 'panel'
  | 'cut'
  | 'mix'
  | 'schedule'
  | 'actuals'
  | 'problems'
  | 'compare';

/** The parts that the page is put together from. */
export interface PageParts {
  readonly headline: HTMLElement;
  readonly knobs: HTMLElement;
  readonly banner: HTMLElement;
  readonly sheetTabs: Tabs;
  readonly formulaBar: HTMLElement;
  readonly notice: HTMLElement;
  readonly find: HTMLElement;
  readonly grid: HTMLElement;
  readonly emptyPage: HTMLElement;
  readonly emptySheet: HTMLElement;
  readonly card: HTMLElement;
  readonly paneTabs: Tabs;
  readonly panes: Readonly<Record<PaneKey, HTMLElement>>;
  readonly status: HTMLElement;
  readonly popup: HTMLElement;
}

function toolbar(sheetTabs: Tabs): HTMLElement {
  return element(
    'div',
    { class: 'toolbar' },
    scrollStrip(sheetTabs.root, { back: 'Sheets before these', on: 'More sheets' }),
    element(
      'div',
      { class: 'toolbar-buttons', attributes: { role: 'toolbar', 'aria-label': 'Job' } },
      button({
        action: 'insert-row',
        text: 'Insert row',
        icon: 'add',
        look: 'icon',
        title: 'Insert row (Ctrl+Enter)',
      }),
      button({
        action: 'insert-kit',
        text: 'Insert kit',
        icon: 'kit',
        look: 'icon',
        title: 'Insert kit…',
      }),
      button({
        action: 'switch-units',
        text: 'Switch units',
        icon: 'units',
        look: 'icon',
        title: 'Switch units',
      }),
      button({
        action: 'export-bill',
        text: 'Export bill of materials',
        icon: 'export',
        look: 'icon',
      }),
      button({ action: 'open-as-text', text: 'Open as text', icon: 'text', look: 'icon' }),
      button({ action: 'toggle-aside', text: 'Row card and bill', icon: 'pane', look: 'icon' }),
    ),
  );
}

function aside(parts: PageParts): HTMLElement {
  const panels = Object.entries(parts.panes).map(([key, pane]) =>
    element(
      'div',
      {
        class: 'pane',
        data: { panel: key },
        attributes: { role: 'tabpanel', tabindex: '0', 'aria-labelledby': `pane-tab-${key}` },
      },
      pane,
    ),
  );
  return element(
    'aside',
    { class: 'aside', attributes: { 'aria-label': 'Row card and bill' } },
    element('div', {
      class: 'splitter',
      data: { splitter: '' },
      attributes: {
        role: 'separator',
        tabindex: '0',
        'aria-orientation': 'vertical',
        'aria-label': 'Width of the row card and bill',
        'aria-valuemin': '220',
        'aria-valuemax': '720',
        'aria-valuenow': '340',
      },
    }),
    element(
      'section',
      { class: 'card-region', attributes: { 'aria-label': 'Row', tabindex: '0' } },
      parts.card,
    ),
    element(
      'section',
      {
        class: 'pane-region',
        attributes: { id: 'panes', 'aria-label': 'Bill, checks, pictures and problems' },
      },
      scrollStrip(parts.paneTabs.root, { back: 'Panes before these', on: 'More panes' }),
      ...panels,
    ),
  );
}

/** Puts the page together. */
export function layPage(parts: PageParts): HTMLElement {
  const sheet = element(
    'div',
    { class: 'sheet', attributes: { id: 'sheet', role: 'tabpanel' } },
    parts.grid,
    parts.emptySheet,
    parts.emptyPage,
  );
  const main = element(
    'main',
    { class: 'main' },
    parts.banner,
    toolbar(parts.sheetTabs),
    parts.formulaBar,
    parts.notice,
    parts.find,
    sheet,
    parts.popup,
  );
  return element(
    'div',
    { class: 'app' },
    parts.headline,
    scrollStrip(parts.knobs, { back: 'Pinned cells before these', on: 'More pinned cells' }),
    element('div', { class: 'work' }, main, aside(parts)),
    parts.status,
  );
}

const narrowest = 220;
const widest = 720;
const step = 24;

/** Lets the aside be made wider with the mouse or, on the splitter, the arrows. */
export function listenToSplitter(
  root: HTMLElement,
  width: { readonly get: () => number; readonly set: (px: number) => void },
): void {
  const splitter = root.querySelector<HTMLElement>('[data-splitter]');
  if (splitter === null) return;
  const set = (px: number): void => {
    const now = Math.max(narrowest, Math.min(widest, Math.round(px)));
    width.set(now);
    splitter.setAttribute('aria-valuenow', String(now));
  };
  splitter.addEventListener('keydown', (event) => {
    const by = { ArrowLeft: step, ArrowRight: -step }[event.key];
    if (by === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    set(width.get() + by);
  });
  splitter.addEventListener('pointerdown', (event) => {
    event.preventDefault();
    splitter.setPointerCapture(event.pointerId);
    const start = event.clientX;
    const from = width.get();
    const move = (moved: PointerEvent): void => {
      set(from + start - moved.clientX);
    };
    splitter.addEventListener('pointermove', move);
    splitter.addEventListener(
      'lostpointercapture',
      () => {
        splitter.removeEventListener('pointermove', move);
      },
      { once: true },
    );
  });
  set(width.get());
}
