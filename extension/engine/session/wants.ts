import { filesAskedFor } from '../geometry/outline-address.ts';
import type { FileReading, SourceRow } from '../job/source.ts';
import { sameList } from '../units/same-list.ts';

/** Keeps the list of outline files that the cells of a job ask for. */
export interface Wants {
  readonly update: (reading: FileReading) => readonly string[];
}

interface Asked {
  readonly rows: readonly SourceRow[];
  readonly files: ReadonlySet<string>;
}

const none: readonly string[] = [];

function filesOf({ cells }: SourceRow): readonly string[] {
  const files: string[] = [];
  for (const { text } of cells.values()) files.push(...filesAskedFor(text));
  return files.length === 0 ? none : files;
}

/** Tables and rows that did not change between two readings are the same objects: the rest is looked at. */
export function openWants(): Wants {
  const known = new WeakMap<SourceRow['cells'], readonly string[]>();
  let tables: ReadonlyMap<string, Asked> = new Map();
  let wants: readonly string[] = [];

  function ofRow(row: SourceRow): readonly string[] {
    const kept = known.get(row.cells);
    if (kept !== undefined) return kept;
    const files = filesOf(row);
    known.set(row.cells, files);
    return files;
  }

  /** True where each row asks for what the row in its place asked for. */
  function asksTheSame(before: readonly SourceRow[], rows: readonly SourceRow[]): boolean {
    return (
      before.length === rows.length &&
      rows.every((row, place) => {
        const old = before[place];
        return old === row || (old !== undefined && ofRow(old) === none && ofRow(row) === none);
      })
    );
  }

  function ofTable(rows: readonly SourceRow[], before: Asked | undefined): Asked {
    if (before?.rows === rows) return before;
    if (before !== undefined && asksTheSame(before.rows, rows)) return { ...before, rows };
    return { rows, files: new Set(rows.flatMap(ofRow)) };
  }

  return {
    update: (reading) => {
      const asked = [...reading.tables].map(
        ([table, rows]) => [table, ofTable(rows, tables.get(table))] as const,
      );
      tables = new Map(asked);
      const files = new Set(asked.flatMap(([, own]) => [...own.files]));
      const now = [...files].sort();
      if (!sameList(now, wants)) wants = now;
      return wants;
    },
  };
}

/** Outline files that the cells of a reading ask for, so that their texts can be brought before it opens. */
export function wantedOutlines(reading: FileReading): readonly string[] {
  return openWants().update(reading);
}
