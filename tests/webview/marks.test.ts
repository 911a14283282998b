import { describe, expect, test } from 'vitest';
import type { CompareChange, CompareView } from '../../extension/protocol/compare-view.ts';
import type { CellView, RowView } from '../../extension/protocol/views.ts';
import { Marks } from '../../webview/marks.ts';

const change: CompareChange = {
  kind: 'changed',
  table: 'part',
  id: 'ring',
  occurrence: 0,
  column: 'tilt',
  there: true,
  place: 'Ring: lean',
  before: '15 deg',
  after: '18 deg',
  effect: '',
  told: 'was 15 deg',
};

function marks(...changes: readonly Partial<CompareChange>[]): Marks {
  const view: CompareView = {
    against: 'HEAD',
    note: '',
    figures: [],
    changes: changes.map((one) => ({ ...change, ...one })),
    followers: [],
  };
  return new Marks(view);
}

const cell = { shown: '18 deg' } as unknown as CellView;

function row(id: string): RowView {
  return { table: 'part', id, occurrence: 0, cells: {} } as unknown as RowView;
}

describe('cell', () => {
  test('a changed cell says what was there; its neighbours say nothing', () => {
    const on = marks({});
    expect(on.cell('part/ring/tilt', cell).mark).toEqual({ kind: 'changed', told: 'was 15 deg' });
    expect(on.cell('part/ring/turn', cell)).toBe(cell);
    expect(on.cell('part/ring#1/tilt', cell)).toBe(cell);
  });

  test('as long as the cell is the same, so is the marked one, so that nothing is painted again', () => {
    const on = marks({});
    const first = on.cell('part/ring/tilt', cell);
    expect(on.cell('part/ring/tilt', cell)).toBe(first);
    expect(on.cell('part/ring/tilt', { ...cell })).not.toBe(first);
  });

  test('without a comparison nothing is marked', () => {
    expect(new Marks(undefined).cell('part/ring/tilt', cell)).toBe(cell);
  });
});

describe('row', () => {
  test('a new row bears its mark at its id, not in its cells', () => {
    const on = marks({ kind: 'added', column: '', told: 'new row' });
    expect(on.row(row('ring')).mark).toEqual({ kind: 'added', told: 'new row' });
    expect(on.cell('part/ring/tilt', cell)).toBe(cell);
  });

  test('a row that is gone is marked nowhere, though another bears its id now', () => {
    const on = marks({ kind: 'removed', column: '', there: false });
    expect(on.row(row('ring')).mark).toBeUndefined();
  });

  test('a mark goes with the comparison it came from', () => {
    const marked = marks({ kind: 'moved', column: '', told: 'moved' }).row(row('ring'));
    expect(marked.mark).toBeDefined();
    expect('mark' in new Marks(undefined).row(marked)).toBe(false);
    const bare = row('ring');
    expect(new Marks(undefined).row(bare)).toBe(bare);
  });
});
