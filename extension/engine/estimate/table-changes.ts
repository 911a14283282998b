import { sameList } from '../units/same-list.ts';
import type { Answers, AnsweredRow } from '../workbook/answers.ts';
import { isSameRow } from '../workbook/row-view.ts';

/** Tables whose rows the bill depends on. */
export const billTables = [
  'part',
  'driver',
  'panel',
  'material',
  'pack',
  'price',
  'supplier',
  'constant',
  'lock',
] as const;

export type BillTables = ReadonlyMap<string, readonly AnsweredRow[]>;

/** The rows of every table the bill depends on, as they are now. */
export function tablesOf(answers: Answers): BillTables {
  return new Map(billTables.map((table) => [table, answers.rows(table)]));
}

/** Rows of one list that are not in the other, either way; most edits leave every row at its place. */
function differingRows(
  old: readonly AnsweredRow[],
  fresh: readonly AnsweredRow[],
): readonly AnsweredRow[] {
  if (old === fresh) return [];
  if (old.length !== fresh.length) return difference(old, fresh);
  const were: AnsweredRow[] = [];
  const are: AnsweredRow[] = [];
  let moved = false;
  for (let index = 0; index < fresh.length; index++) {
    const [before, row] = [old[index], fresh[index]];
    if (before === row || before === undefined || row === undefined) continue;
    moved ||= !isSameRow(before, row);
    were.push(before);
    are.push(row);
  }
  return moved ? difference(were, are) : [...are, ...were];
}

function difference(
  old: readonly AnsweredRow[],
  fresh: readonly AnsweredRow[],
): readonly AnsweredRow[] {
  const kept = new Set(old);
  return [...fresh.filter((row) => !kept.delete(row)), ...kept];
}

/**
 * Rows (`table/id`) that came, went or answer differently: rows are compared by identity, for a row
 * whose answers did not change stays the same object. The second answer tells whether anything moved.
 */
export function changedRows(
  before: ReadonlyMap<string, readonly AnsweredRow[]>,
  now: ReadonlyMap<string, readonly AnsweredRow[]>,
): { readonly keys: ReadonlySet<string>; readonly moved: boolean } {
  const keys = new Set<string>();
  let moved = false;
  for (const [table, fresh] of now) {
    const old = before.get(table) ?? [];
    if (old === fresh) continue;
    const differing = differingRows(old, fresh);
    for (const row of differing) keys.add(`${table}/${row.id}`);
    moved ||= differing.length > 0 || !sameList(old, fresh);
  }
  return { keys, moved };
}
