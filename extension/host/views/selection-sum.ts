import {
  rowKey,
  sameDimension,
  showQuantity,
  type Quantity,
  type Snapshot,
} from '../../engine/index.ts';
import type { FromWebview } from '../../protocol/messages.ts';
import { moneyText } from './money.ts';

type Selection = FromWebview & { readonly type: 'selection' };

function chargeSum(selection: Selection, snapshot: Snapshot): number {
  return selection.rows
    .flatMap((row) => snapshot.needs.get(rowKey(row)) ?? [])
    .reduce((sum, need) => sum + need.charge, 0);
}

function quantities(selection: Selection, snapshot: Snapshot): readonly Quantity[] {
  const wanted = new Set(selection.rows.map(rowKey));
  return snapshot.workbook
    .rows(selection.table)
    .filter((row) => wanted.has(rowKey(row)))
    .flatMap((row) => selection.columns.map((column) => row.cell(column).result))
    .flatMap((result) =>
      result.state === 'value' && result.value.kind === 'quantity' ? [result.value] : [],
    );
}

/** "Sum 4 ft 2 in · mean … · 6 cells" of the selected cells of one dimension; empty where nothing adds up. */
export function sumOfSelection(selection: Selection, snapshot: Snapshot): string {
  if (
    selection.columns.length === 1 &&
    selection.columns[0] === 'charge' &&
    selection.table === 'part'
  )
    return selection.rows.length < 2
      ? ''
      : `Sum ${moneyText(chargeSum(selection, snapshot), snapshot.settings)} · ${String(selection.rows.length)} rows`;
  const values = quantities(selection, snapshot);
  const [first] = values;
  if (first === undefined || values.length < 2) return '';
  if (!values.every((value) => sameDimension(value.dimension, first.dimension)))
    return `${String(values.length)} values of different dimensions`;
  const base = values.reduce((sum, value) => sum + value.base, 0);
  const { dimension } = first;
  const count = values.length;
  const mean = showQuantity({ base: base / count, dimension }, snapshot.settings).text;
  // Temperatures are points on a scale: they have a mean but no sum.
  if (dimension.tag === 'point') return `Mean ${mean} · ${String(count)} values`;
  const sum = showQuantity({ base, dimension }, snapshot.settings).text;
  return `Sum ${sum} · mean ${mean} · ${String(count)} values`;
}
