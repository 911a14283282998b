import type { Bill, BillLine, RowNeed } from '../estimate/bill.ts';
import { rowKey } from './row-key.ts';

/** Needs by row key. */
export interface Needs {
  readonly get: (key: string) => readonly RowNeed[] | undefined;
}

/**
 * Needs by row, kept up with the bill: only the lines that changed are taken out and put in again,
 * and not before somebody asks.
 */
export interface NeedsIndex {
  readonly needs: Needs;
  readonly update: (bill: Bill) => void;
}

/** A row's own material before what it draws, whatever changed last. */
function ownFirst(one: RowNeed, two: RowNeed): number {
  if (one.draw !== two.draw) return one.draw < two.draw ? -1 : 1;
  if (one.material === two.material) return 0;
  return one.material < two.material ? -1 : 1;
}

export function openNeedsIndex(): NeedsIndex {
  const needs = new Map<string, readonly RowNeed[]>();
  let lines = new Map<string, BillLine>();

  function takeOut(line: BillLine, kept: ReadonlySet<RowNeed>): void {
    for (const need of line.rows) {
      if (kept.has(need)) continue;
      const key = rowKey({ table: need.table, id: need.row, occurrence: need.occurrence });
      const left = (needs.get(key) ?? []).filter((one) => one !== need);
      if (left.length === 0) needs.delete(key);
      else needs.set(key, left);
    }
  }

  function putIn(line: BillLine, there: ReadonlySet<RowNeed>): void {
    for (const need of line.rows) {
      if (there.has(need)) continue;
      const key = rowKey({ table: need.table, id: need.row, occurrence: need.occurrence });
      needs.set(key, [...(needs.get(key) ?? []), need].sort(ownFirst));
    }
  }

  let waiting: Bill | undefined;

  function catchUp(bill: Bill): void {
    const next = new Map(bill.lines.map((line) => [line.id, line]));
    const rowsOf = (line: BillLine | undefined): ReadonlySet<RowNeed> => new Set(line?.rows);
    for (const line of lines.values()) {
      const now = next.get(line.id);
      if (now !== line) takeOut(line, rowsOf(now));
    }
    for (const line of next.values()) {
      const before = lines.get(line.id);
      if (before !== line) putIn(line, rowsOf(before));
    }
    lines = next;
  }

  return {
    needs: {
      get: (key) => {
        if (waiting !== undefined) catchUp(waiting);
        waiting = undefined;
        return needs.get(key);
      },
    },
    update: (bill) => {
      waiting = bill;
    },
  };
}
