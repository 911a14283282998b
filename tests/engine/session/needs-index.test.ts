import { describe, expect, test } from 'vitest';
import type { Bill } from '../../../extension/engine/estimate/bill.ts';
import { openNeedsIndex } from '../../../extension/engine/session/needs-index.ts';
import { doorPair, doorSession, doorSnapshot, replaced } from '../../helpers/sample-session.ts';

const edited = [
  doorPair,
  replaced(doorPair, 'qty = 9', 'qty = 20'),
  replaced(doorPair, 'material = "fleece"', 'material = "suede_60"'),
  replaced(doorPair, 'percent = "2 %"', 'percent = "1.5 %"'),
  doorPair,
];

function keysOf(bill: Bill): readonly string[] {
  const needs = bill.lines.flatMap((line) => line.rows);
  return [
    ...new Set(needs.map(({ table, row, occurrence }) => `${table}/${row}#${String(occurrence)}`)),
  ];
}

describe('openNeedsIndex', () => {
  test('kept up over edits it says the same as one made anew', () => {
    const kept = openNeedsIndex();
    const session = doorSession();
    for (const text of edited) {
      session.setText(text);
      const { bill } = session.snapshot();
      kept.update(bill);
      const fresh = openNeedsIndex();
      fresh.update(bill);
      for (const key of [...keysOf(bill), 'part/nothing#0'])
        expect(kept.needs.get(key)).toEqual(fresh.needs.get(key));
    }
  });

  test('a row’s own material comes before what it draws', () => {
    const { needs } = doorSnapshot();
    const draws = needs.get('part/door_soak#0')?.map((need) => need.draw);
    expect(draws).toEqual(['', 'brush', 'catalyst', 'pot']);
  });

  test('a row without needs has none', () => {
    expect(doorSnapshot().needs.get('part/mid_sticks#1')).toBeUndefined();
  });
});
