import type { FileReading } from '../job/source.ts';
import { tracedBack, tracedText, type TracedCell } from './cell-trace.ts';

/** A version of a file and whatever its keeper knows of it: commit, author, day. */
export interface FileVersion<About> {
  readonly reading: FileReading;
  readonly about: About;
}

/** A version in which a cell came to say what it says. */
export interface CellPast<About> {
  readonly version: FileVersion<About>;
  /** What the row was called then. */
  readonly id: string;
  /** Undefined where the version took the cell out. */
  readonly text: string | undefined;
}

/** The past of one cell, put together from the newest version back. */
export interface CellHistory<About> {
  /** Takes the next older version; false once the cell's row is not there any more. */
  readonly take: (version: FileVersion<About>) => boolean;
  /** Versions that changed the cell, newest first; the oldest one taken counts where the cell is in it. */
  readonly changes: () => readonly CellPast<About>[];
}

function canBeRead({ state }: FileReading): boolean {
  return state === 'readable' || state === 'newer';
}

/** Opens the history of a cell as the newest version calls it. Versions that cannot be read are passed over. */
export function openCellHistory<About>(cell: TracedCell): CellHistory<About> {
  const changes: CellPast<About>[] = [];
  let last: { readonly version: FileVersion<About>; readonly at: TracedCell } | undefined;
  let ended = false;

  /** The version that was taken last changed the cell: what is older says something else. */
  function settle(older: string | undefined): void {
    if (last === undefined) return;
    const text = tracedText(last.version.reading, last.at);
    if (text !== older) changes.push({ version: last.version, id: last.at.id, text });
  }

  return {
    take: (version) => {
      if (ended || !canBeRead(version.reading)) return !ended;
      const at =
        last === undefined ? cell : tracedBack(last.at, last.version.reading, version.reading);
      settle(at === undefined ? undefined : tracedText(version.reading, at));
      if (at === undefined) ended = true;
      else last = { version, at };
      return !ended;
    },
    changes: () => {
      if (ended || last === undefined) return changes;
      const text = tracedText(last.version.reading, last.at);
      return text === undefined
        ? changes
        : [...changes, { version: last.version, id: last.at.id, text }];
    },
  };
}
