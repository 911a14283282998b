import { filesAskedFor } from '../geometry/outline-address.ts';
import type { FileReading, SourceRow } from '../job/source.ts';

/** Keeps the list of outline files that the cells of a job ask for. */
export interface Wants {
  readonly update: (reading: FileReading) => readonly string[];
}

/** Rows that did not change between two readings keep their cells, so that only the others are looked at. */
export function openWants(): Wants {
  const known = new WeakMap<SourceRow['cells'], readonly string[]>();
  let wants: readonly string[] = [];

  function filesOf({ cells }: SourceRow): readonly string[] {
    const kept = known.get(cells);
    if (kept !== undefined) return kept;
    const files = [...cells.values()].flatMap(({ text }) => filesAskedFor(text));
    known.set(cells, files);
    return files;
  }

  return {
    update: ({ tables }) => {
      const files = new Set<string>();
      for (const rows of tables.values()) {
        for (const row of rows) for (const file of filesOf(row)) files.add(file);
      }
      const now = [...files].sort();
      const same = now.length === wants.length && now.every((file, index) => file === wants[index]);
      if (!same) wants = now;
      return wants;
    },
  };
}

/** Outline files that the cells of a reading ask for, so that their texts can be brought before it opens. */
export function wantedOutlines(reading: FileReading): readonly string[] {
  return openWants().update(reading);
}
