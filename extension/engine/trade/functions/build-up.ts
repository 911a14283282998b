import type { FunctionEntry, RowView } from '../../formula/catalogue.ts';
import { ok } from '../../result.ts';
import { length } from '../../units/dimension.ts';
import { numberIn } from '../arguments.ts';

/**
 * Kinds that rise from what they stand on at one place, or hold it together, instead of lying on it;
 * what stands on them is left out too.
 */
const risingKinds: ReadonlySet<string> = new Set([
  'base',
  'existing',
  'hole',
  'baffle',
  'ring',
  'tube_ring',
  'stacked_ring',
  'shim',
  'fasteners',
  'grille',
  'stiffener',
  'clip',
  'wiring_hole',
  'trim_edge',
  'bezel',
  'gasket',
  'block',
  'limit',
]);

/** What a row lies with, in mm: its layers as written, else what the glass in it comes to when cured. */
function thicknessOf(row: RowView): number {
  const layers = numberIn(row.value('layers')) ?? 1;
  const one = numberIn(row.value('thickness'));
  return one === undefined ? (numberIn(row.value('cured_thickness')) ?? 0) : one * layers;
}

function rowsLying(row: RowView): readonly RowView[] {
  const rising = row.standing.filter(({ kind }) => risingKinds.has(kind));
  const left = new Set(
    rising.flatMap(({ id, standing }) => [id, ...standing.map((one) => one.id)]),
  );
  return row.standing.filter(({ id }) => !left.has(id));
}

/** Thickness of everything that lies on a row, in mm: what BUILD.UP answers. */
export function builtUp(row: RowView): number {
  return rowsLying(row).reduce((sum, lying) => sum + thicknessOf(lying), 0);
}

/**
 * BUILD.UP. A row lies with thickness × layers, mat with its cured thickness; pieces (qty) lie side by side and add nothing.
 */
export const buildUp: FunctionEntry = {
  name: 'BUILD.UP',
  group: 'cloth',
  help: 'Thickness of everything that lies on a row, thickness × layers: skin, filler, covering, and mat as it cures. Rings and what they carry are left out; pieces (qty) lie side by side and add nothing.',
  parameters: [{ name: 'row', help: 'The row that the layers lie on.', type: { kind: 'row' } }],
  result: { kind: 'quantity', dimension: length },
  example: { formula: '=BUILD.UP(base)', shows: '1/4 in' },
  source: 'definition',
  rows: {
    reads: ['thickness', 'layers', 'cured_thickness'],
    run: (row) => ok({ kind: 'quantity', base: builtUp(row), dimension: length }),
  },
};
