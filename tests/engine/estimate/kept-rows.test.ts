import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openRowKeeper, openUnbroken } from '../../../extension/engine/estimate/kept-rows.ts';
import { renewedList } from '../../../extension/engine/units/renewed-list.ts';
import type { AnsweredRow } from '../../../extension/engine/workbook/answers.ts';
import { fakeRow } from '../../helpers/fake-answers.ts';

/** A row that looks at the one it stands on. */
function row(id: string, on = ''): AnsweredRow {
  return fakeRow('part', { id, on });
}

function kept(row: AnsweredRow) {
  return { row, looked: [`part/${row.cell('on').text ?? ''}`] };
}

const none: ReadonlySet<string> = new Set();

describe('openUnbroken', () => {
  test('gives the same list where every row can be read', () => {
    const unbroken = openUnbroken();
    const rows = [row('base'), row('ring')];
    expect(unbroken(rows)).toBe(rows);
    const torn = fakeRow('part', { id: 'torn', broken: 'yes' });
    expect(unbroken([...rows, torn])).toEqual(rows);
    expect(unbroken([torn, ...rows])).toEqual(rows);
    expect(unbroken(rows)).toBe(rows);
    const renewed = renewedList(rows, new Map([[1, torn]]));
    expect(unbroken(renewed)).toEqual([rows[0]]);
    expect(unbroken(renewedList(renewed, new Map([[0, row('top')]])))).toHaveLength(1);
  });
});

describe('openRowKeeper', () => {
  test('only a row that is another now is worked out again, and so is who looked at it', () => {
    const rows = [row('base'), row('ring', 'base'), row('cloth', 'ring')];
    const keeper = openRowKeeper<ReturnType<typeof kept>>();
    expect(keeper.update(rows, none, kept).changed).toBeUndefined();
    const asked: string[] = [];
    const next = rows.with(0, row('base'));
    const { changed } = keeper.update(next, new Set(['part/base']), (one) => {
      asked.push(one.id);
      return kept(one);
    });
    expect(asked).toEqual(['base', 'ring']);
    expect(changed).toEqual([0, 1]);
  });

  test('where the same is made of a row again, nothing has changed', () => {
    const rows = [row('base'), row('ring', 'base')];
    const keeper = openRowKeeper<ReturnType<typeof kept>>();
    const { kept: first } = keeper.update(rows, none, kept);
    const next = keeper.update(rows, new Set(['part/base']), (one, before) => before ?? kept(one));
    expect(next).toEqual({ kept: first, changed: [] });
    expect(next.kept).toBe(first);
  });

  test('rows that come, go and move are told by no list of places', () => {
    const [base, ring] = [row('base'), row('ring', 'base')];
    const keeper = openRowKeeper<ReturnType<typeof kept>>();
    keeper.update([base, ring], none, kept);
    const seen = keeper.update([ring, base], none, () => {
      throw new Error('nothing is worked out');
    });
    expect(seen.kept.map((one) => one.row)).toEqual([ring, base]);
    expect(seen.changed).toBeUndefined();
    expect(keeper.update([ring], none, kept).kept).toHaveLength(1);
  });

  const ids = ['a', 'b', 'c', 'd'];
  const edit = fc.record({
    at: fc.nat(3),
    on: fc.constantFrom(...ids, ''),
    what: fc.constantFrom('set', 'set', 'set', 'out', 'in', 'swap'),
  });

  /** What is made of a row here hangs on the row and on the one it stands on. */
  function worked(rows: readonly AnsweredRow[]) {
    return (one: AnsweredRow) => {
      const ground = rows.find(({ id }) => id === one.cell('on').text);
      return { ...kept(one), says: `${one.id} on ${ground?.cell('on').text ?? 'nothing'}` };
    };
  }

  test('edit after edit it holds what a fresh keeper would', () => {
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 12 }), (edits) => {
        const keeper = openRowKeeper<ReturnType<ReturnType<typeof worked>>>();
        let rows: readonly AnsweredRow[] = ids.map((id) => row(id));
        keeper.update(rows, none, worked(rows));
        for (const { at, on, what } of edits) {
          const old = rows[at];
          const moved = new Set(old === undefined ? [] : [`part/${old.id}`]);
          if (what === 'set' && old !== undefined) rows = rows.with(at, row(old.id, on));
          if (what === 'out') rows = rows.filter((one) => one !== old);
          if (what === 'swap') rows = rows.toReversed();
          const id = ids.find((one) => rows.every((other) => other.id !== one));
          if (what === 'in' && id !== undefined) {
            rows = [...rows, row(id, on)];
            moved.add(`part/${id}`);
          }
          const now = keeper.update(rows, moved, worked(rows)).kept.map(({ says }) => says);
          expect(now).toEqual(rows.map((one) => worked(rows)(one).says));
        }
      }),
      { numRuns: 200 },
    );
  });
});
