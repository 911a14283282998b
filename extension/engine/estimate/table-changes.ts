import { differingPlaces } from '../units/renewed-list.ts';
import type { Answers, AnsweredRow } from '../workbook/answers.ts';
import { isSameRow } from '../workbook/row-view.ts';
import { saysElse } from './cells-read.ts';

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
  const places = differingPlaces(old, fresh);
  if (places === undefined) return difference(old, fresh);
  const at = (rows: readonly AnsweredRow[]): readonly AnsweredRow[] =>
    places.flatMap((place) => rows[place] ?? []);
  const [were, are] = [at(old), at(fresh)];
  const moved = were.some((row, index) => !isSameRow(row, are[index]));
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
    moved ||= differingPlaces(old, fresh)?.length !== 0;
  }
  return { keys, moved };
}

/** Columns of a part that what stands on it looks at: where the part stands, its hand and its name. */
const lookedThrough = ['panel', 'on', 'hand', 'name'] as const;

/**
 * Those of the changed rows (`table/id`) whose change matters to what stands on them: of parts only the
 * ones that came, went or moved, or that stand elsewhere, are for another hand or have another name.
 */
export function changedUnder(
  before: ReadonlyMap<string, readonly AnsweredRow[]>,
  now: ReadonlyMap<string, readonly AnsweredRow[]>,
  changed: ReadonlySet<string>,
): ReadonlySet<string> {
  const [old, fresh] = [before.get('part') ?? [], now.get('part') ?? []];
  const places = differingPlaces(old, fresh);
  if (places === undefined) return changed;
  const keys = new Set<string>();
  for (const key of changed) if (!key.startsWith('part/')) keys.add(key);
  for (const place of places) {
    const [was, is] = [old[place], fresh[place]];
    if (was === undefined || is === undefined || !saysElse(was, is, lookedThrough)) continue;
    keys.add(`part/${was.id}`).add(`part/${is.id}`);
  }
  return keys;
}
