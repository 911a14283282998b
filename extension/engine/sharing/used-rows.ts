import type { SourceRow } from '../job/source.ts';
import type { Aligned } from './align-names.ts';
import { mentionsOf, type RowMatch } from './match-rows.ts';
import type { Side } from './versions.ts';

/** A row that one side or both took out. */
export interface Gone {
  readonly base: SourceRow | undefined;
  readonly ours: SourceRow | undefined;
  readonly theirs: SourceRow | undefined;
}

export interface Matches {
  readonly aligned: Aligned;
  readonly ours: RowMatch;
  readonly theirs: RowMatch;
}

/** Cells that only one side wrote, with the rows they stand in. */
type Written = ReadonlyMap<SourceRow, ReadonlySet<string>>;

function changedKeys(
  row: SourceRow,
  base: SourceRow,
  other: SourceRow | undefined,
): ReadonlySet<string> {
  return new Set(
    [...row.cells]
      .filter(([key, { text }]) => {
        if (other === undefined) return true;
        return text !== base.cells.get(key)?.text && text !== other.cells.get(key)?.text;
      })
      .map(([key]) => key),
  );
}

/** Cells that come into the merged job from one side alone. */
function writtenBy(side: Side, matches: Matches, disputed: ReadonlySet<Gone>): Written {
  const own = matches[side];
  const other = matches[side === 'ours' ? 'theirs' : 'ours'];
  const written = new Map<SourceRow, ReadonlySet<string>>();
  for (const row of own.added) {
    if (!matches.aligned.alike.has(`${row.table}/${row.id}`)) {
      written.set(row, new Set(row.cells.keys()));
    }
  }
  const kept = new Set([...disputed].map((rows) => rows[side]));
  for (const [base, row] of own.pairs) {
    const counterpart = other.pairs.get(base);
    if (counterpart === undefined && !kept.has(row)) continue;
    const keys = changedKeys(row, base, counterpart);
    if (keys.size > 0) written.set(row, keys);
  }
  return written;
}

function isUsed(side: Side, row: SourceRow, matches: Matches, written: Written): boolean {
  const named = [...written].some(([one, keys]) =>
    [...keys].some((key) => one.cells.get(key)?.text.includes(row.id) === true),
  );
  if (!named) return false;
  const mentions = mentionsOf(matches.aligned.versions[side], row);
  return mentions.some((mention) => written.get(mention.row)?.has(mention.key) === true);
}

/**
 * Rows that one side took out while the other wrote links or formulas that speak of them. Rows in
 * dispute may be kept, so what they speak of is in dispute too.
 */
export function usedRows(
  matches: Matches,
  gone: readonly Gone[],
  disputed: ReadonlySet<Gone>,
): readonly Gone[] {
  const found = new Set(disputed);
  const used: Gone[] = [];
  for (;;) {
    const written = {
      ours: writtenBy('ours', matches, found),
      theirs: writtenBy('theirs', matches, found),
    };
    const more = gone.filter((rows) => {
      const side: Side = rows.ours === undefined ? 'theirs' : 'ours';
      const row = rows[side];
      return !found.has(rows) && row !== undefined && isUsed(side, row, matches, written[side]);
    });
    if (more.length === 0) return used;
    for (const rows of more) found.add(rows);
    used.push(...more);
  }
}
