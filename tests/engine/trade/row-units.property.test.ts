import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../extension/engine/index.ts';
import { jobWith, row } from '../../helpers/priced-job.ts';

/** Sizes of a panel in inches. */
interface Panel {
  readonly length: number;
  readonly width: number;
  readonly ring: number;
  readonly cover: number;
}

const byRow = [...catalogue.values()].filter(({ rows, result }) => rows && result.kind !== 'text');

/** What every function of a row answers about a panel written in inches, or in millimetres. */
function answers(panel: Panel, units: 'in' | 'mm'): readonly (number | undefined)[] {
  const text = (inches: number): string =>
    units === 'in' ? `${String(inches)} in` : `${(inches * 25.4).toFixed(6)} mm`;
  const asked = byRow.map(({ name }, index) =>
    row('measure', `m${String(index)}_asked`, { value: `=${name}(base)` }),
  );
  const { workbook } = jobWith(
    { units },
    row('part', 'base', {
      ...{ kind: 'base', shape: `rect(${text(panel.length)}, ${text(panel.width)})` },
      thickness: text(0.25),
    }),
    row('part', 'ring', {
      ...{ kind: 'ring', on: 'base', size: text(panel.ring), depth: text(2) },
      ...{ tilt: '10 deg', at_x: text(0), at_y: text(0), material: 'panelboard_3' },
    }),
    row('part', 'skin', { kind: 'skin', on: 'base', thickness: text(0.125) }),
    row('part', 'cover', { kind: 'vinyl', on: 'skin', thickness: text(panel.cover) }),
    ...asked,
  );
  return byRow.map((_, index) => {
    const cell = workbook.row('measure', `m${String(index)}_asked`)?.cell('value');
    const result = cell?.result;
    const given = result?.state === 'value' && result.value.kind === 'quantity';
    return given ? result.value.base : undefined;
  });
}

describe('functions of a row', () => {
  test('give the same answer for a panel written in inches or in millimetres', () => {
    const size = (min: number, max: number) => fc.integer({ min: min * 16, max: max * 16 });
    fc.assert(
      fc.property(size(18, 30), size(12, 18), size(5, 8), size(0, 1), (...sixteenths) => {
        const [length, width, ring, cover] = sixteenths.map((count) => count / 16) as [
          number,
          number,
          number,
          number,
        ];
        const panel = { length, width, ring, cover };
        const [inches, millimetres] = [answers(panel, 'in'), answers(panel, 'mm')];
        expect(inches.filter((answer) => answer !== undefined).length).toBeGreaterThan(6);
        byRow.forEach(({ name }, index) => {
          const [one, other] = [inches[index], millimetres[index]];
          expect(other === undefined, name).toBe(one === undefined);
          expect((other ?? 0) - (one ?? 0), name).toBeCloseTo(0, 2);
        });
      }),
      { numRuns: 6 },
    );
  });
});
