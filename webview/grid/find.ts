import type { SheetView } from '../../extension/protocol/views.ts';
import { idColumn } from '../addresses.ts';
import type { State } from '../state.ts';

/** A cell in which a text was found. */
export interface Found {
  readonly key: string;
  readonly column: string;
}

/** Cells of a sheet, row by row, that show a text or hold it; capitals make no difference. */
export function findIn(sheet: SheetView, state: State, text: string): readonly Found[] {
  const wanted = text.toLowerCase();
  if (wanted === '') return [];
  const has = (one: string): boolean => one.toLowerCase().includes(wanted);
  const found: Found[] = [];
  for (const key of sheet.order) {
    if (has(key)) found.push({ key, column: idColumn });
    sheet.columns.forEach((column, index) => {
      const { shown, typed } = state.cell(sheet.table, key, { key: column.key, index });
      if (has(shown) || has(typed)) found.push({ key, column: column.key });
    });
  }
  return found;
}

/**
 * Place in `found` to go to from a cell: the cell's own or the next one (`by` 0), the next one (1) or
 * the one before (−1), round the ends; −1 where nothing was found.
 */
export function nextFound(
  sheet: SheetView,
  found: readonly Found[],
  from: Found | undefined,
  by: -1 | 0 | 1,
): number {
  if (found.length === 0) return -1;
  const rows = new Map(sheet.order.map((key, index) => [key, index]));
  const columns = new Map(sheet.columns.map(({ key }, index) => [key, index]));
  const width = sheet.columns.length + 1;
  const place = ({ key, column }: Found): number =>
    (rows.get(key) ?? 0) * width + 1 + (columns.get(column) ?? -1);
  const at = from === undefined ? -1 : place(from);
  if (by < 0) {
    const before = found.findLastIndex((one) => place(one) < at);
    return before < 0 ? found.length - 1 : before;
  }
  const after = found.findIndex((one) => (by === 0 ? place(one) >= at : place(one) > at));
  return Math.max(0, after);
}
