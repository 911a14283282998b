import {
  columnsOf,
  type AnsweredRow,
  type CellRef,
  type LocatedProblem,
  type Problem,
  type Snapshot,
} from '../../engine/index.ts';
import { rowAt } from '../addresses.ts';

/** A problem as people read it: the sentence, and the cell that mends it. */
export interface WordedProblem {
  readonly message: string;
  readonly cell: CellRef | undefined;
}

function rowOf(place: CellRef, snapshot: Snapshot): AnsweredRow | undefined {
  const first = snapshot.workbook.row(place.table, place.id);
  return first?.occurrence === place.occurrence ? first : rowAt(place, snapshot);
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** What the card of a row of this kind calls a column. */
export function columnLabel(
  { table, column }: Pick<CellRef, 'table' | 'column'>,
  kind: string,
  snapshot: Snapshot,
): string {
  return (
    snapshot.book.kinds.get(kind)?.labels.get(column) ??
    columnsOf(snapshot.shown, table).find(({ key }) => key === column)?.label ??
    column.replaceAll('_', ' ')
  );
}

function labelOf(place: CellRef, kind: string, snapshot: Snapshot): string {
  return lowerFirst(columnLabel(place, kind, snapshot));
}

/** A cell as its card calls it: `outline of Front door base`. */
function cellWords(place: CellRef, snapshot: Snapshot): string {
  const { table, column } = place;
  if (table === 'job') return `${column.replaceAll('_', ' ')} of the job`;
  const row = rowOf(place, snapshot);
  const name = row?.cell('name').text ?? place.id;
  return `${labelOf(place, row?.kind ?? '', snapshot)} of ${name}`;
}

/** A way out of cells of one row that are each worked out from the next: which of them to fill in. */
function loopWords(problem: Problem, place: CellRef, snapshot: Snapshot): WordedProblem {
  const row = rowOf(place, snapshot);
  const columns = snapshot.book.kinds.get(row?.kind ?? '')?.columns ?? [];
  const members = columns.filter((column) => {
    const cell = row?.cell(column);
    return cell?.result.state === 'no-answer' && cell.result.problem.message === problem.message;
  });
  const [column] = members;
  if (row === undefined || column === undefined || members.length < 2)
    return { message: problem.message, cell: place };
  const labels = members.map((member) => labelOf({ ...place, column: member }, row.kind, snapshot));
  const choice = `${labels.slice(0, -1).join(', ')} or ${labels.at(-1) ?? ''}`;
  const name = row.cell('name').text ?? place.id;
  return { message: `Fill in the ${choice} of ${name}.`, cell: { ...place, column } };
}

function resultAt(place: CellRef, snapshot: Snapshot): 'value' | 'blank' | 'no-answer' | undefined {
  return rowOf(place, snapshot)?.cell(place.column).result.state;
}

/** The sentence of a rule that a row breaks, which says more than what its formulas refuse. */
function brokenRule(place: CellRef, snapshot: Snapshot): string | undefined {
  const broken = snapshot.problems.find(
    ({ problem, place: at }) =>
      problem.code === 'row-not-possible' &&
      at?.table === place.table &&
      at.row === place.id &&
      (at.occurrence ?? 0) === place.occurrence,
  );
  return broken?.problem.message;
}

function refusal(problem: Problem, place: CellRef, snapshot: Snapshot): string {
  return brokenRule(place, snapshot) ?? problem.message;
}

/**
 * Why a cell has no answer, told of the cell where it begins: what to fill in or to change there,
 * not the names that the file gives it.
 */
export function causeOf(
  problem: Problem,
  place: CellRef,
  snapshot: Snapshot,
  seen: readonly string[] = [],
): WordedProblem {
  const plain = { message: problem.message, cell: place };
  const reads = (state: 'blank' | 'no-answer'): CellRef | undefined =>
    snapshot.workbook.readsOf(place).find((read) => resultAt(read, snapshot) === state);
  switch (problem.code) {
    case 'cell-waits': {
      const read = reads('no-answer');
      if (read === undefined) return plain;
      const name = `${read.table}/${read.id}#${String(read.occurrence)}/${read.column}`;
      const result = rowOf(read, snapshot)?.cell(read.column).result;
      if (result?.state !== 'no-answer' || seen.includes(name)) return plain;
      return causeOf(result.problem, read, snapshot, [...seen, name]);
    }
    case 'cell-blank': {
      const read = reads('blank');
      if (read === undefined) return plain;
      return { message: `Fill in the ${cellWords(read, snapshot)}.`, cell: read };
    }
    case 'cell-loop-of-defaults':
      return loopWords(problem, place, snapshot);
    case 'function-refuses':
      return { message: refusal(problem, place, snapshot), cell: place };
    default:
      return plain;
  }
}

type Placed = Pick<LocatedProblem, 'problem' | 'place'>;

function cellOf({ place }: Placed): CellRef | undefined {
  if (place?.row === undefined || place.column === undefined || place.table === 'job')
    return undefined;
  const { table, row, column, occurrence = 0 } = place;
  return { table, id: row, occurrence, column };
}

/** Id of the material that a cell of a row, or of one of its draws, is about. */
export function materialAt(place: CellRef, snapshot: Snapshot): string {
  const draw = /^draw\.\w+\./.exec(place.column)?.[0] ?? '';
  const cell = rowOf(place, snapshot)?.cell(`${draw}material`);
  if (cell?.result.state !== 'value') return cell?.text ?? '';
  const { value } = cell.result;
  return value.kind === 'link' ? value.id : value.kind === 'text' ? value.text : (cell.text ?? '');
}

/** Why a row's amount of a material is not known, and what would make it known. */
function noAmount(problem: Problem, place: CellRef, snapshot: Snapshot): string {
  const row = rowOf(place, snapshot);
  const result = row?.cell(place.column).result;
  if (row === undefined || result?.state !== 'no-answer') return problem.message;
  const id = materialAt(place, snapshot);
  const material = snapshot.book.materials.get(id)?.cells.get('name');
  const cause = causeOf(result.problem, place, snapshot).message;
  const what = material === undefined ? 'amount' : `amount of ${material}`;
  return `No ${what} for ${row.cell('name').text ?? row.id} yet. ${cause}`;
}

/** A problem in the words of the bench, with the cell to go to. */
export function worded(located: Placed, snapshot: Snapshot): WordedProblem {
  const { problem } = located;
  const cell = cellOf(located);
  if (cell === undefined) return { message: problem.message, cell };
  if (problem.code === 'need-unanswered')
    return { message: noAmount(problem, cell, snapshot), cell };
  if (problem.code === 'need-negative')
    return { message: brokenRule(cell, snapshot) ?? problem.message, cell };
  return causeOf(problem, cell, snapshot);
}

/** Codes of what a broken rule of the same row says already, and better. */
const saidByRule = new Set(['function-refuses', 'need-negative']);

function isSaidByRule(located: LocatedProblem, snapshot: Snapshot): boolean {
  const cell = cellOf(located);
  if (cell === undefined || !saidByRule.has(located.problem.code)) return false;
  const typed = rowOf(cell, snapshot)?.cell(cell.column).origin === 'typed';
  return !typed && brokenRule(cell, snapshot) !== undefined;
}

/** The problems that people are shown: one sentence for a row that cannot be, not one a formula. */
export function shownProblems(snapshot: Snapshot): readonly LocatedProblem[] {
  return snapshot.problems.filter((located) => !isSaidByRule(located, snapshot));
}
