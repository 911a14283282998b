import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openSession, type Edit } from '../../extension/engine/index.ts';
import { sourceText } from '../helpers/source-files.ts';

const session = openSession(
  sourceText('sample-jobs/front-door-pair.paneljob'),
  sourceText('sample-jobs/books/demo-shop.panelbook'),
);

/** What the pair needs of a material, and what its packs cost, after an edit of one part. */
function after(edit: Edit, material: string): { readonly need: number; readonly buy: number } {
  const planned = session.plan([edit]);
  if (!planned.ok) throw new Error(planned.problem.message);
  session.setText(planned.value.text);
  const line = session.snapshot().bill.lines.find(({ id }) => id === material);
  if (line?.need === undefined) throw new Error(`The bill needs no ${material}`);
  return { need: line.need.base, buy: line.buy };
}

function cell(id: string, column: string, text: string): Edit {
  return { kind: 'set-cell', row: { table: 'part', id }, column, text };
}

const kinds = new Map(
  session
    .snapshot()
    .workbook.rows('part')
    .map((row) => [row.kind, row.id] as const),
);

function idOf(kind: string): string {
  const id = kinds.get(kind);
  if (id === undefined) throw new Error(`The job has no ${kind}`);
  return id;
}

const percent = fc.integer({ min: 0, max: 60 });

describe('more is never less', () => {
  test.each([
    ['resin', 'poly_resin'],
    ['skin', 'fleece'],
    ['vinyl', 'vinyl_54'],
    ['filler', 'light_filler'],
    ['base', 'hardboard_6'],
  ])('more waste of the %s never needs less %s, nor costs less', (kind, material) => {
    const id = idOf(kind);
    fc.assert(
      fc.property(percent, percent, (waste, more) => {
        const some = after(cell(id, 'waste', `${String(waste)} %`), material);
        const all = after(cell(id, 'waste', `${String(waste + more)} %`), material);
        expect(all.need).toBeGreaterThanOrEqual(some.need * (1 - 1e-9));
        expect(all.buy).toBeGreaterThanOrEqual(some.buy);
      }),
      { numRuns: 15 },
    );
  });

  test('more layers of mat never need less mat', () => {
    const id = idOf('mat');
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 0, max: 3 }),
        (layers, more) => {
          const some = after(cell(id, 'layers', String(layers)), 'mat_34');
          const all = after(cell(id, 'layers', String(layers + more)), 'mat_34');
          expect(all.need).toBeGreaterThanOrEqual(some.need * (1 - 1e-9));
        },
      ),
      { numRuns: 10 },
    );
  });
});
