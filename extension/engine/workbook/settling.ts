import type { ValueType } from '../formula/value.ts';
import type { Understood } from './understood.ts';
import type { NameGraph } from './name-graph.ts';
import type { Cell, Meaning } from './row.ts';
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
function faultOf(meaning: Meaning): string {
  return meaning.kind === 'fault' ? meaning.problem.message : '';
}

const isFormula = (cell: Cell): boolean => cell.text?.text.startsWith('=') === true;

export function openSettling(understand: (cell: Cell) => Understood, graph: NameGraph): Settling {
  // Cells carry marks of their own: a job opens with tens of thousands of them to be looked at.
  let queue: Cell[] = [];
  let visited: Cell[] = [];
  /** Cells whose meaning is being worked out, one for the sake of the other. */
  const open: Cell[] = [];

  function disturb(cell: Cell): void {
    if (cell.stale) return;
    cell.stale = true;
    queue.push(cell);
  }

  /** Disturbs what reads a cell, where that says something else now than it did. */
  function passOn(cell: Cell, type: ValueType, meaning: Meaning): void {
    if (cell.readers === undefined) return;
    const differs = !sameType(type, cell.type) || faultOf(meaning) !== faultOf(cell.meaning);
    const leads = cell.type.kind === 'link' || type.kind === 'link';
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
    const { type, meaning } = cell;
    open.push(cell);
    const understood = understand(cell);
    open.pop();
    graph.hang(cell, understood.reads, understood.watches);
    cell.meaning = understood.meaning;
    cell.type = understood.type;
    cell.problems = understood.problems;
    passOn(cell, type, meaning);
  }

  return {
    disturb,
    forget: (cell) => {
      cell.stale = false;
    },
    typeOf: (cell) => {
      if (cell.stale && open.length < deepest && !open.includes(cell)) visit(cell);
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
