import type { SourceRow } from '../job/source.ts';
import type { Side, VersionName } from './versions.ts';

/** Where a conflict stands: a cell of a row, a whole row, or a setting (table `job` or `book`). */
export interface ConflictPlace {
  readonly table: string;
  readonly row: string | undefined;
  readonly occurrence: number;
  readonly column: string | undefined;
}

/**
 * What two branches do not agree on.
 * - `cell`: both changed one cell or setting.
 * - `row`: one took a row out that the other changed or uses.
 * - `twice`: both put in a row under one id; theirs was given another id.
 * - `name`: both renamed one row.
 * - `text`: lines that are no cells, such as an unknown table.
 */
export type ConflictKind = 'cell' | 'row' | 'twice' | 'name' | 'text';

/** How a conflict is settled; `both` keeps two rows. */
export type Choice = Side | 'both';

export interface Conflict {
  /** Stays the same as long as the conflict is there: `part/ring#0/size`. */
  readonly key: string;
  readonly kind: ConflictKind;
  readonly place: ConflictPlace;
  /** What each version holds: the text of a cell, the lines of a row; undefined: not there. */
  readonly base: string | undefined;
  readonly ours: string | undefined;
  readonly theirs: string | undefined;
  /** False where the version before both is not known. */
  readonly baseKnown: boolean;
  readonly choices: readonly Choice[];
}

/** A conflict with what is needed to write it into a file. */
export interface FoundConflict extends Conflict {
  /** Values or lines as they are spelt in the file. */
  readonly spelt: Readonly<Record<VersionName, string | undefined>>;
  /** Said behind theirs' marker, so that the conflict can be read again from the file. */
  readonly label?: string;
}

/** Settles conflicts as they are found, and collects those that stay open. */
export interface Verdicts {
  /** Undefined where the conflict stays open. */
  readonly settle: (conflict: FoundConflict) => Choice | undefined;
  readonly open: readonly FoundConflict[];
}

export function openVerdicts(choose: (conflict: Conflict) => Choice | undefined): Verdicts {
  const open: FoundConflict[] = [];
  return {
    open,
    settle: (conflict) => {
      const choice = choose(conflict);
      if (choice !== undefined && conflict.choices.includes(choice)) return choice;
      open.push(conflict);
      return undefined;
    },
  };
}

export function conflictKey({ table, row, occurrence, column }: ConflictPlace): string {
  const name = row === undefined ? table : `${table}/${row}#${String(occurrence)}`;
  return column === undefined ? name : `${name}/${column}`;
}

export function rowPlace(row: SourceRow, column?: string): ConflictPlace {
  return { table: row.table, row: row.id, occurrence: row.occurrence, column };
}
