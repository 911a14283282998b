import type { CellMark, CompareView } from '../extension/protocol/compare-view.ts';
import type { CellView, RowView } from '../extension/protocol/views.ts';
import { rowKey } from './addresses.ts';

/** Marks of a comparison by the place they stand at. */
export class Marks {
  readonly #cells = new Map<string, CellMark>();
  readonly #rows = new Map<string, CellMark>();
  readonly #made = new Map<string, { readonly of: CellView; readonly marked: CellView }>();

  constructor(view: CompareView | undefined) {
    for (const change of view?.changes ?? []) {
      if (!change.there) continue;
      const { kind, told, column } = change;
      const row = `${change.table}/${rowKey(change)}`;
      if (column === '') this.#rows.set(row, { kind, told });
      else this.#cells.set(`${row}/${column}`, { kind, told });
    }
  }

  /** A cell with its mark; the same object as long as the cell is the same. */
  cell(key: string, view: CellView): CellView {
    const mark = this.#cells.get(key);
    if (mark === undefined) return view;
    const made = this.#made.get(key);
    if (made?.of === view) return made.marked;
    const marked = { ...view, mark };
    this.#made.set(key, { of: view, marked });
    return marked;
  }

  /** A row with the mark of the row as a whole, which its id shows. */
  row(row: RowView): RowView {
    const mark = this.#rows.get(`${row.table}/${rowKey(row)}`);
    if (mark !== undefined) return { ...row, mark };
    const { mark: old, ...bare } = row;
    return old === undefined ? row : bare;
  }
}
