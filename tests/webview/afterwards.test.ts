import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { Afterwards } from '../../webview/afterwards.ts';

let frames: (() => void)[] = [];
let done: string[] = [];
let afterwards = new Afterwards(window);

beforeEach(() => {
  [frames, done] = [[], []];
  afterwards = new Afterwards(window);
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  vi.stubGlobal('requestAnimationFrame', (run: () => void) => frames.push(run));
});

afterEach(() => {
  // What a test left put off is done with.
  document.body.dispatchEvent(new Event('pointerdown', { bubbles: true }));
  vi.useRealTimers();
  vi.unstubAllGlobals();
  document.body.replaceChildren();
});

function put(name: string): void {
  afterwards.put(() => done.push(name));
}

/** The frame is made, and what was put off to after it runs. */
async function frame(): Promise<void> {
  for (const run of frames.splice(0)) run();
  vi.useRealTimers();
  await new Promise((resolve) => setTimeout(resolve, 20));
}

function entryNamed(name: string): HTMLTextAreaElement {
  const entry = document.createElement('textarea');
  entry.name = name;
  entry.addEventListener('keydown', (event) => {
    done.push(`${name}: ${event.key}`);
    if (event.key === 'Enter') event.preventDefault();
  });
  document.body.append(entry);
  return entry;
}

function key(target: Element, name: string): boolean {
  const how = { key: name, bubbles: true, cancelable: true };
  return target.dispatchEvent(new KeyboardEvent('keydown', how));
}

describe('Afterwards', () => {
  test('what was put off waits until the answer has its frame', async () => {
    put('focus');
    afterwards.answered();
    expect(done).toEqual([]);
    await frame();
    expect(done).toEqual(['focus']);
  });

  test('the frame of the answer is marked before what was put off is done', async () => {
    performance.clearMarks();
    const marked = (): number => performance.getEntriesByName('panelwright:painted').length;
    afterwards.put(() => done.push(`focus behind ${String(marked())}`));
    const patch = { type: 'patch', revision: 2, part: 'totals', sheets: [], rows: '' } as const;
    afterwards.written({ ...patch, cause: 7 });
    await frame();
    expect(done).toEqual(['focus behind 1']);
  });

  test('a patch that no edit of this page caused does nothing that was put off', async () => {
    put('focus');
    afterwards.written({ type: 'patch', revision: 2, cause: undefined, sheets: [], rows: '' });
    await frame();
    expect(done).toEqual([]);
  });

  test('it is done all the same where no answer or no frame comes', () => {
    put('focus');
    vi.advanceTimersByTime(200);
    expect(done).toEqual(['focus']);
  });

  test('it is done once', async () => {
    put('focus');
    afterwards.answered();
    key(document.body, 'a');
    await frame();
    expect(done).toEqual(['focus']);
  });

  test('an answer to what came before does not do what was put off since', async () => {
    put('first');
    afterwards.answered();
    put('second');
    expect(done).toEqual(['first']);
    await frame();
    expect(done).toEqual(['first']);
  });

  test('a press comes behind it', () => {
    put('focus');
    document.body.dispatchEvent(new Event('pointerdown', { bubbles: true }));
    expect(done).toEqual(['focus']);
  });

  test('a key is taken by what has the focus then, and by nothing else', () => {
    const [one, two] = [entryNamed('one'), entryNamed('two')];
    one.focus();
    afterwards.put(() => {
      two.focus();
    });
    expect(key(one, 'Enter')).toBe(false);
    expect(done).toEqual(['two: Enter']);
    expect(key(two, 'a')).toBe(true);
    expect(done).toEqual(['two: Enter', 'two: a']);
  });
});
