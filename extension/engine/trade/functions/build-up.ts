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

/** Columns that thickness follows from. */
export const builtUpColumns: readonly string[] = ['thickness', 'layers'];

function thicknessOf(row: RowView): number {
  const layers = numberIn(row.value('layers')) ?? 1;
  return (numberIn(row.value('thickness')) ?? 0) * layers;
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
 * BUILD.UP. A row lies with thickness × layers; pieces (qty) lie side by side and add nothing. Mat is
 * laid behind the skin and has no thickness of its own unless somebody writes one.
 */
export const buildUp: FunctionEntry = {
  name: 'BUILD.UP',
  group: 'cloth',
  help: 'Thickness of everything that lies on a row, thickness × layers: skin, filler, covering. Mat is laid behind and counts where a thickness is written; rings and what they carry are left out; pieces (qty) lie side by side and add nothing.',
  parameters: [{ name: 'row', help: 'The row that the layers lie on.', type: { kind: 'row' } }],
  result: { kind: 'quantity', dimension: length },
  example: { formula: '=BUILD.UP(base)', shows: '1/4 in' },
  source: 'definition',
  rows: {
    reads: builtUpColumns,
    run: (row) => ok({ kind: 'quantity', base: builtUp(row), dimension: length }),
  },
};
