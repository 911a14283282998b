import { describe, expect, test } from 'vitest';
import { cardView } from '../../../extension/host/views/card-view.ts';
import { checksFigure, checkViews } from '../../../extension/host/views/check-view.ts';
import { sheetContext } from '../../../extension/host/views/sheet-context.ts';
import { gridCell } from '../../../extension/host/views/sheet-view.ts';
import { doorPair, doorSnapshot, replaced } from '../../helpers/sample-session.ts';

const whole = doorSnapshot();
// The room at the seal is cut to less than board and covering take.
const tight = doorSnapshot(replaced(doorPair, 'value = "5/8 in"', 'value = "1/4 in"'));

describe('checkViews', () => {
  test('the worst stands first', () => {
    const outcomes = checkViews(tight).map(({ outcome }) => outcome);
    expect(outcomes[0]).toBe('fail');
    expect(outcomes.at(-1)).toBe('pass');
    expect(checkViews(tight)[0]).toMatchObject({ id: 'door_edge', word: 'fails', tone: 'error' });
  });
});

describe('checksFigure', () => {
  test('counts what is not a plain pass', () => {
    expect(checksFigure(whole)).toMatchObject({ value: '1 to decide, 1 near', tone: 'plain' });
    expect(checksFigure(tight)).toMatchObject({
      value: '1 fails, 1 to decide, 1 near',
      tone: 'error',
    });
    expect(checksFigure({ ...whole, checks: [] })).toBeUndefined();
  });
});

describe('the checks sheet', () => {
  test('shows outcome and room beside the figures', () => {
    const context = sheetContext(tight);
    const row = tight.workbook.row('check', 'door_edge');
    if (row === undefined) throw new Error('There is no such check.');
    expect(gridCell('outcome', row, context)).toMatchObject({ shown: 'fails', severity: 'error' });
    expect(gridCell('margin', row, context).shown).toMatch(/in$/);
    expect(context.columns.get('check')?.map(({ key }) => key)).toContain('outcome');
  });

  test('a part tells the checks that look at it, and a check itself', () => {
    const context = sheetContext(tight);
    const card = (table: string, id: string) => {
      const row = tight.workbook.row(table, id);
      if (row === undefined) throw new Error(`There is no ${id}.`);
      return cardView(row, context, new Set());
    };
    expect(card('part', 'mid_ring').checks.map(({ id }) => id)).toEqual([
      'mid_room',
      'mid_front',
      'mid_aim',
    ]);
    const check = card('check', 'door_edge');
    expect(check.checks).toMatchObject([{ id: 'door_edge', outcome: 'fail' }]);
    expect(check.problems.filter(({ code }) => code.startsWith('check-'))).toEqual([]);
  });
});
