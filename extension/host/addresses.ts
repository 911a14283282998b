import { rowKey, type AnsweredRow, type CellRef, type Snapshot } from '../engine/index.ts';
import type { CellAddress, RowAddress } from '../protocol/messages.ts';

/**
 * A cell as the engine calls it. The sheet of settings has a row a setting (`job`, `units`, `value`),
 * where the engine knows one row with a column a setting.
 */
export function engineCell(cell: CellAddress): CellRef {
  if (cell.table !== 'job') return cell;
  return { table: 'job', id: 'job', occurrence: 0, column: cell.id };
}

/** The sheet's address of a setting. */
export function settingCell(key: string): CellAddress {
  return { table: 'job', id: key, occurrence: 0, column: 'value' };
}

/** The row itself, also where a merge left two rows with one id. */
export function rowAt(row: RowAddress, snapshot: Snapshot): AnsweredRow | undefined {
  return snapshot.workbook.rows(row.table).find((one) => rowKey(one) === rowKey(row));
}
