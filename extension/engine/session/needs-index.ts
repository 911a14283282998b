import type { Bill, BillLine, RowNeed } from '../estimate/bill.ts';
import { rowKey } from './snapshot.ts';

/** Needs by row, kept up with the bill: only the lines that changed are taken out and put in again. */
export interface NeedsIndex {
  readonly needs: ReadonlyMap<string, readonly RowNeed[]>;
  readonly update: (bill: Bill) => void;
}

export function openNeedsIndex(): NeedsIndex {
  const needs = new Map<string, readonly RowNeed[]>();
  let lines = new Map<string, BillLine>();

  function takeOut(line: BillLine): void {
    for (const need of line.rows) {
      const key = rowKey({ table: need.table, id: need.row });
      const left = (needs.get(key) ?? []).filter((one) => one !== need);
      if (left.length === 0) needs.delete(key);
      else needs.set(key, left);
    }
  }

  function putIn(line: BillLine): void {
    for (const need of line.rows) {
      const key = rowKey({ table: need.table, id: need.row });
      needs.set(key, [...(needs.get(key) ?? []), need]);
    }
  }

  return {
    needs,
    update: (bill) => {
      const next = new Map(bill.lines.map((line) => [line.id, line]));
      for (const line of lines.values()) if (next.get(line.id) !== line) takeOut(line);
      for (const line of next.values()) if (lines.get(line.id) !== line) putIn(line);
      lines = next;
    },
  };
}
