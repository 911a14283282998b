import type { SourceRow } from '../job/source.ts';
import type { Renamed } from './match-rows.ts';

/** One cell of ours to be written; `block` counts in ours as it is. */
export interface CellWrite {
  readonly block: number;
  readonly key: string;
  /** The value as TOML; undefined takes the key out. */
  readonly spelt: string | undefined;
}

/** What has to be done to ours so that it holds both branches' work. */
export interface MergePlan {
  readonly cells: CellWrite[];
  /** Rows of ours that go. */
  readonly out: SourceRow[];
  /** Rows of theirs that come. */
  readonly in: SourceRow[];
  /** Rows of ours that take theirs' lines. */
  readonly replaced: { readonly row: SourceRow; readonly by: SourceRow }[];
  /** Done at the end: rows that get another name, with what speaks of them. */
  readonly renames: Renamed[];
  /** Done at the end: what speaks of one row is made to speak of another. */
  readonly references: Renamed[];
}

export function emptyPlan(): MergePlan {
  return { cells: [], out: [], in: [], replaced: [], renames: [], references: [] };
}
