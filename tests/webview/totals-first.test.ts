import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { ToWebview } from '../../extension/protocol/messages.ts';
import { TotalsFirst } from '../../webview/totals-first.ts';

type Patch = Extract<ToWebview, { readonly type: 'patch' }>;

function patch(revision: number, part?: Patch['part']): Patch {
  const bare = { type: 'patch', revision, cause: undefined, sheets: [], rows: '' } as const;
  return part === undefined ? bare : { ...bare, part };
}

let frames: (() => void)[] = [];
let taken: ToWebview[] = [];
let turns = new TotalsFirst(() => undefined);

beforeEach(() => {
  [frames, taken] = [[], []];
  turns = new TotalsFirst((message) => taken.push(message));
  vi.useFakeTimers();
  vi.stubGlobal('requestAnimationFrame', (run: () => void) => frames.push(run));
});

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** The frame is made, and what was put off to after it runs. */
async function frame(): Promise<void> {
  for (const run of frames.splice(0)) run();
  vi.useRealTimers();
  await new Promise((resolve) => setTimeout(resolve, 20));
}

describe('TotalsFirst', () => {
  test('a patch that is told whole goes through at once', () => {
    turns.receive(patch(2));
    turns.receive(patch(3));
    expect(taken).toEqual([patch(2), patch(3)]);
  });

  test('what comes behind new totals waits until their frame is out, in its order', async () => {
    for (const one of [patch(2, 'totals'), patch(2, 'rest'), patch(3)]) turns.receive(one);
    expect(taken).toEqual([patch(2, 'totals')]);
    await frame();
    expect(taken).toEqual([patch(2, 'totals'), patch(2, 'rest'), patch(3)]);
  });

  test('a second edit behind the first is taken with it, so that a burst does not pile up', async () => {
    const all = [2, 3, 4].flatMap((revision) => [
      patch(revision, 'totals'),
      patch(revision, 'rest'),
    ]);
    for (const one of all) turns.receive(one);
    await frame();
    expect(taken).toEqual(all);
  });

  test('a page without frames, for it is not looked at, takes everything a little later', () => {
    turns.receive(patch(2, 'totals'));
    turns.receive(patch(2, 'rest'));
    vi.advanceTimersByTime(100);
    expect(taken).toEqual([patch(2, 'totals'), patch(2, 'rest')]);
    turns.receive(patch(3));
    expect(taken).toHaveLength(3);
  });
});
