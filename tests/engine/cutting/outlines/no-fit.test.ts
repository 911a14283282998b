import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  finePitch,
  formOf,
  type Form,
} from '../../../../extension/engine/cutting/outlines/forms.ts';
import { depthOf, openNoFits } from '../../../../extension/engine/cutting/outlines/no-fit.ts';
import type { Corner, Loops } from '../../../../extension/engine/cutting/outlines/shape-rows.ts';

function box(length: number, width: number, x = 0, y = 0): readonly Corner[] {
  return [
    [x, y],
    [x + length, y],
    [x + length, y + width],
    [x, y + width],
  ];
}

function formsOf(shapes: readonly Loops[]): readonly Form[] {
  return shapes.map((loops, index) =>
    formOf({ grown: loops, drawn: loops }, { index, type: index, rotation: 0 }, 3),
  );
}

/** Fine cells of a form, moved by whole cells. */
function cellsOf({ raster, fineColumns }: Form, dx: number, dy: number): ReadonlySet<string> {
  const cells = new Set<string>();
  for (let column = 0; column < fineColumns; column++) {
    for (let at = raster.first[column] ?? 0; at < (raster.first[column + 1] ?? 0); at += 2) {
      const end = raster.spans[at + 1] ?? 0;
      for (let row = raster.spans[at] ?? 0; row <= end; row++) {
        cells.add(`${column + dx * finePitch} ${row + dy * finePitch}`);
      }
    }
  }
  return cells;
}

const anyFrame = fc.record({
  length: fc.integer({ min: 12, max: 40 }),
  width: fc.integer({ min: 12, max: 40 }),
  wall: fc.integer({ min: 2, max: 3 }),
  cut: fc.integer({ min: 1, max: 5 }),
});

function frame({
  length,
  width,
  wall,
  cut,
}: typeof anyFrame extends fc.Arbitrary<infer T> ? T : never): Loops {
  const [, ...rest] = box(length, width);
  const outer: readonly Corner[] = [[cut, 0], ...rest, [0, cut]];
  return {
    outer,
    holes: [box(length - 2 * wall - cut, width - 2 * wall - cut, wall + cut, wall + cut)],
  };
}

describe('openNoFits', () => {
  test('a step is blocked where two parts have a cell in common, and only there, either way round', () => {
    fc.assert(
      fc.property(anyFrame, anyFrame, (a, b) => {
        const small: Loops = { outer: box(b.wall * 2, b.cut + 1), holes: [] };
        const forms = formsOf([frame(a), frame(b), small]);
        const { columns, rows, blocked, deep } = openNoFits(forms);
        for (const [one, other] of [
          [0, 1],
          [0, 2],
        ] as const) {
          const fixed = cellsOf(forms[one] as Form, 0, 0);
          const map = blocked(one, other);
          const [left, low] = [columns[other] ?? 0, rows[other] ?? 0];
          const ny = (rows[one] ?? 0) + low + 1;
          for (let step = 0; step < map.length; step += 3) {
            const [dx, dy] = [Math.floor(step / ny) - left, (step % ny) - low];
            const meets = [...cellsOf(forms[other] as Form, dx, dy)].some((at) => fixed.has(at));
            expect(map[step] === 1).toBe(meets);
            expect(depthOf(deep, one, other, step) > 0).toBe(meets);
            expect(depthOf(deep, other, one, map.length - 1 - step) > 0).toBe(meets);
          }
        }
      }),
      { numRuns: 12 },
    );
  });
});
