import type { Answers, AnsweredRow } from '../workbook/answers.ts';

/** Tables whose rows the bill depends on. */
export const billTables = [
  'part',
  'driver',
  'panel',
  'material',
  'pack',
  'price',
  'constant',
] as const;

export type BillTables = ReadonlyMap<string, readonly AnsweredRow[]>;

/** The rows of every table the bill depends on, as they are now. */
export function tablesOf(answers: Answers): BillTables {
  return new Map(billTables.map((table) => [table, answers.rows(table)]));
}

/**
 * Rows (`table/id`) that came, went or answer differently: rows are compared by identity, for a row
 * whose answers did not change stays the same object. The second answer tells whether anything moved.
 */
export function changedRows(
  before: BillTables,
  now: BillTables,
): { readonly keys: ReadonlySet<string>; readonly moved: boolean } {
  const keys = new Set<string>();
  let moved = false;
  for (const table of billTables) {
    const old = before.get(table) ?? [];
    const fresh = now.get(table) ?? [];
    if (old === fresh) continue;
    if (old.length === fresh.length && old.every((row, index) => row === fresh[index])) continue;
    moved = true;
    const kept = new Set(old);
    for (const row of fresh) if (!kept.delete(row)) keys.add(`${table}/${row.id}`);
    for (const row of kept) keys.add(`${table}/${row.id}`);
  }
  return { keys, moved };
}
