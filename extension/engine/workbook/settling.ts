import type { ValueType } from '../formula/value.ts';
import type { Understood } from './understood.ts';
import type { NameGraph } from './name-graph.ts';
import type { Cell } from './row.ts';
import { sameType } from './same-meaning.ts';

/** Cells whose meaning is to be worked out again, and those for which it was. */
export interface Settling {
  /** Notes that a cell's meaning is to be worked out again. */
  readonly disturb: (cell: Cell) => void;
  readonly forget: (cell: Cell) => void;
  /** Type of a cell as it is now; works it out first where it can. */
  readonly typeOf: (cell: Cell) => ValueType;
  /** Works out all that is disturbed; answers the cells that were looked at. */
  readonly settle: () => readonly Cell[];
}

/** Chains deeper than this are worked out from a queue instead, so that the stack stays small. */
const deepest = 60;

/** A cell looked at more often in one go is in a loop, which is told elsewhere. */
const mostVisits = 20;

/** Text of a fault, which cells that wait for it repeat. */
function faultOf(cell: Cell): string {
  return cell.meaning.kind === 'fault' ? cell.meaning.problem.message : '';
}

const isFormula = (cell: Cell): boolean => cell.text?.text.startsWith('=') === true;

export function openSettling(understand: (cell: Cell) => Understood, graph: NameGraph): Settling {
  // Cells carry marks of their own: a job opens with tens of thousands of them to be looked at.
  let queue: Cell[] = [];
  let visited: Cell[] = [];
  const visiting = new Set<Cell>();

  function disturb(cell: Cell): void {
    if (cell.stale) return;
    cell.stale = true;
    queue.push(cell);
  }

  function passOn(cell: Cell, before: { type: ValueType; fault: string }): void {
    if (cell.readers === undefined) return;
    const differs = !sameType(before.type, cell.type) || before.fault !== faultOf(cell);
    const leads = cell.type.kind === 'link' || before.type.kind === 'link';
    for (const reader of cell.readers) {
      // A literal that reads another cell, and a path through a link, hang on its text itself.
      if (differs || leads || !isFormula(reader)) disturb(reader);
    }
  }

  function visit(cell: Cell): void {
    cell.stale = false;
    if (cell.visits === 0) visited.push(cell);
    cell.visits += 1;
    if (cell.visits > mostVisits) return;
    const before = { type: cell.type, fault: faultOf(cell) };
    visiting.add(cell);
    const { meaning, type, problems, reads, watches } = understand(cell);
    visiting.delete(cell);
    graph.hang(cell, reads, watches);
    cell.meaning = meaning;
    cell.type = type;
    cell.problems = problems;
    passOn(cell, before);
  }

  return {
    disturb,
    forget: (cell) => {
      cell.stale = false;
    },
    typeOf: (cell) => {
      if (cell.stale && !visiting.has(cell) && visiting.size < deepest) visit(cell);
      return cell.type;
    },
    settle: () => {
      for (const cell of queue) if (cell.stale) visit(cell);
      const found = visited;
      queue = [];
      visited = [];
      for (const cell of found) cell.visits = 0;
      return found;
    },
  };
}
