import { describe, expect, test } from 'vitest';
import { readViewState, ViewMemory } from '../../webview/view-state.ts';

describe('readViewState', () => {
  test.each([undefined, null, 7, 'x', { widths: 3, cursors: [1] }])('%j begins afresh', (kept) => {
    expect(readViewState(kept)).toMatchObject({
      table: '',
      widths: {},
      pane: 'bill',
      asideShown: true,
    });
  });

  test('what was kept comes back; what cannot be a width does not', () => {
    const kept = {
      table: 'driver',
      widths: { part: { name: 300, tilt: 'wide' } },
      cursors: { part: ['base', 'tilt'] },
    };
    expect(readViewState(kept)).toMatchObject({
      table: 'driver',
      widths: { part: { name: 300 } },
      cursors: { part: ['base', 'tilt'] },
    });
  });
});

describe('ViewMemory', () => {
  test('each change is handed on whole', () => {
    const kept: unknown[] = [];
    const memory = new ViewMemory(undefined, (state) => kept.push(state));
    memory.setWidth('part', 'name', 280);
    memory.setCursor('part', 'base', 'tilt');
    expect(readViewState(kept.at(-1))).toEqual(memory.now);
    expect(memory.now.widths).toEqual({ part: { name: 280 } });
  });
});
