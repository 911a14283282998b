import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { OwnCost } from '../../../extension/engine/estimate/own-cost.ts';
import { openPartTally } from '../../../extension/engine/estimate/part-tally.ts';
import type { RowOutcome } from '../../../extension/engine/estimate/row-outcome.ts';
import { renewedList } from '../../../extension/engine/units/renewed-list.ts';

interface Row {
  readonly outcome: RowOutcome;
}

const row: fc.Arbitrary<Row> = fc
  .record({ loose: fc.nat(2), told: fc.constantFrom('', 'one', 'two'), priced: fc.boolean() })
  .map(({ loose, told, priced }) => ({
    outcome: {
      ...{ asked: [], missing: [], loose },
      problems: told === '' ? [] : [{ code: told, message: told, severity: 'warning' as const }],
      ...(priced && { own: { words: told } as unknown as OwnCost }),
    },
  }));

/** The same, worked out by looking at every row. */
function looked(rows: readonly Row[]) {
  return {
    loose: rows.reduce((sum, { outcome }) => sum + outcome.loose, 0),
    problems: rows.flatMap(({ outcome }) => outcome.problems),
    own: rows.flatMap(({ outcome }) => outcome.own ?? []),
  };
}

test('rows that change one after the other come to what all of them come to', () => {
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 1, maxLength: 12 }),
      fc.array(fc.array(fc.tuple(fc.nat(11), row), { maxLength: 3 }), { maxLength: 8 }),
      fc.array(row),
      (first, steps, others) => {
        const tally = openPartTally();
        let rows: readonly Row[] = first;
        expect(tally(rows)).toEqual(looked(rows));
        for (const step of steps) {
          rows = renewedList(rows, new Map(step.map(([at, one]) => [at % first.length, one])));
          expect(tally(rows)).toEqual(looked(rows));
        }
        expect(tally(others)).toEqual(looked(others));
      },
    ),
  );
});
