import type { Problem } from '../problems.ts';
import { cellName, placeOfCell, type Cell } from './row.ts';
import { workbookProblem } from './workbook-problems.ts';

interface Visit {
  readonly cell: Cell;
  readonly index: number;
  low: number;
  next: number;
  open: boolean;
}

/**
 * Groups of cells that depend on each other in a circle, found from these cells on (Tarjan's strongly
 * connected components, without recursion: chains of cells may be long).
 */
export function loopsFrom(cells: Iterable<Cell>): readonly (readonly Cell[])[] {
  const visits = new Map<Cell, Visit>();
  const open: Visit[] = [];
  const loops: Cell[][] = [];

  function enter(cell: Cell, path: Visit[]): void {
    const visit = { cell, index: visits.size, low: visits.size, next: 0, open: true };
    visits.set(cell, visit);
    open.push(visit);
    path.push(visit);
  }

  function leave(visit: Visit, path: readonly Visit[]): void {
    const above = path.at(-1);
    if (above !== undefined) above.low = Math.min(above.low, visit.low);
    if (visit.low !== visit.index) return;
    const members: Cell[] = [];
    for (let one = open.pop(); one !== undefined; one = open.pop()) {
      one.open = false;
      members.push(one.cell);
      if (one === visit) break;
    }
    if (members.length > 1 || visit.cell.reads.includes(visit.cell)) loops.push(members);
  }

  function walk(from: Cell): void {
    const path: Visit[] = [];
    enter(from, path);
    for (let visit = path.at(-1); visit !== undefined; visit = path.at(-1)) {
      const read = visit.cell.reads[visit.next];
      visit.next += 1;
      if (read === undefined) {
        path.pop();
        leave(visit, path);
        continue;
      }
      const seen = visits.get(read);
      if (seen === undefined) enter(read, path);
      else if (seen.open) visit.low = Math.min(visit.low, seen.index);
    }
  }

  for (const cell of cells) if (!visits.has(cell)) walk(cell);
  return loops;
}

/** The way from a start to a cell, told by where each cell on it was come to from. */
function wayBack(start: Cell, end: Cell, from: ReadonlyMap<Cell, Cell>): readonly Cell[] {
  const way = [start];
  for (let at: Cell | undefined = end; at !== undefined && at !== start; at = from.get(at)) {
    way.unshift(at);
  }
  return way;
}

/** The shortest way round a loop from its first cell, which it ends with again. */
function wayRound(members: readonly Cell[], start: Cell): readonly Cell[] {
  const inside = new Set(members);
  const from = new Map<Cell, Cell>();
  const queue = [start];
  for (const cell of queue) {
    for (const read of cell.reads) {
      if (read === start) return [start, ...wayBack(start, cell, from)];
      if (!inside.has(read) || from.has(read)) continue;
      from.set(read, cell);
      queue.push(read);
    }
  }
  return [start];
}

function byPlace(a: Cell, b: Cell): number {
  const [one, other] = [cellName(a), cellName(b)];
  if (a.row.table !== b.row.table) return a.row.table < b.row.table ? -1 : 1;
  if (a.row.position !== b.row.position) return a.row.position - b.row.position;
  return one < other ? -1 : one > other ? 1 : 0;
}

/** Names joined as a sentence lists them: `a, b or c`. */
function alternatives(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} or ${last}`;
}

/** The sentence about one loop, told at the first of its members. */
export function loopProblem(members: readonly Cell[]): { first: Cell; problem: Problem } {
  const sorted = [...members].sort(byPlace);
  const first = sorted.find((cell) => cell.text?.origin === 'typed') ?? sorted[0];
  if (first === undefined) throw new Error('A loop has members.');
  const path = wayRound(members, first).map(cellName).join(' needs ');
  const place = { place: placeOfCell(first) };
  const fillable = sorted.filter((cell) => cell.text?.origin === 'default').map(cellName);
  const onlyDefaults = sorted.every((cell) => cell.text?.origin !== 'typed');
  if (!onlyDefaults || fillable.length === 0) {
    return { first, problem: workbookProblem('cell-loop', { path }, place) };
  }
  const cells = alternatives(fillable);
  return {
    first,
    problem: workbookProblem(
      'cell-loop-of-defaults',
      { path, cells },
      { ...place, severity: 'note' },
    ),
  };
}
