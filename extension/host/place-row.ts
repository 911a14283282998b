import { showQuantity, type Edit, type Snapshot } from '../engine/index.ts';
import type { RowAddress } from '../protocol/messages.ts';
import { rowAt } from './addresses.ts';
import { placeStep } from './views/panel-view.ts';

const lengthDimension = { length: 1, mass: 0, time: 0, temperature: 0, money: 0 };

/**
 * Edits that put a part elsewhere on its panel, in mm, to the nearest step of the job's unit; or the
 * sentence why it stays.
 */
export function placeEdits(
  row: RowAddress,
  place: { readonly x: number; readonly y: number },
  snapshot: Snapshot,
): readonly Edit[] | string {
  const answered = rowAt(row, snapshot);
  if (answered === undefined) return `There is no ${row.table} called ${row.id} any more.`;
  const cells = [
    ['at_x', place.x],
    ['at_y', place.y],
  ] as const;
  if (!cells.every(([, mm]) => Number.isFinite(mm))) return `${row.id} cannot be put there.`;
  const edits: Edit[] = [];
  for (const [column, mm] of cells) {
    const cell = answered.cell(column);
    if (cell.formula) return `${row.id} is placed by a formula: change ${column} in its cell.`;
    const step = placeStep(snapshot);
    const base = Math.round(mm / step) * step;
    const { result } = cell;
    // A blank cell says nothing yet: what is put there is written, be it the zero.
    const now =
      result.state === 'value' && result.value.kind === 'quantity' ? result.value.base : NaN;
    if (Math.abs(base - now) < step / 2) continue;
    const { units } = snapshot.settings;
    const { text } = showQuantity({ base, dimension: lengthDimension }, snapshot.settings, units);
    edits.push({ kind: 'set-cell', row, column, text });
  }
  return edits;
}
