import { loopProblem, loopsFrom } from './loops.ts';
import type { Cell } from './row.ts';

/** Keeps account of the loops among cells. */
export interface Looping {
  /** Finds loops that came or went with cells whose reads changed; answers the cells in question. */
  readonly look: (cells: ReadonlySet<Cell>) => ReadonlySet<Cell>;
  readonly forget: (cell: Cell) => readonly Cell[];
}

const none: readonly never[] = [];

export function openLooping(): Looping {
  const mates = new Map<Cell, readonly Cell[]>();

  function loosen(cell: Cell): readonly Cell[] {
    const members = mates.size === 0 ? none : (mates.get(cell) ?? none);
    for (const member of members) {
      mates.delete(member);
      member.loop = undefined;
    }
    return members;
  }

  return {
    forget: (cell) => loosen(cell).filter((member) => member !== cell),
    look: (cells) => {
      const touched = new Set<Cell>();
      const from = new Set<Cell>();
      for (const cell of cells) {
        if (cell.reads.length > 0) from.add(cell);
        for (const member of loosen(cell)) {
          touched.add(member);
          from.add(member);
        }
      }
      for (const members of loopsFrom(from)) {
        for (const member of members) for (const mate of loosen(member)) touched.add(mate);
        const { problem } = loopProblem(members);
        for (const member of members) {
          mates.set(member, members);
          member.loop = problem;
          touched.add(member);
        }
      }
      return touched;
    },
  };
}
