import type { Problem } from '../problems.ts';
import type { CellResult } from './answers.ts';
import type { Outcome } from './evaluation.ts';
import type { EvaluatorFault } from './evaluator-faults.ts';
import { blankResult, cellName, placeOfCell, type Cell } from './row.ts';
import { isMissing, workbookProblem } from './workbook-problems.ts';

/** Why a formula gave no answer, in the words of the cell at which it began. */
function ownProblem(fault: EvaluatorFault): Problem {
  const { code, reason } = fault;
  return workbookProblem(code, { reason, name: reason });
}

interface Root {
  readonly name: string;
  readonly reason: string;
}

function rootOf(cell: Cell, fault: EvaluatorFault): Root {
  if (cell.loop !== undefined) return { name: cellName(cell), reason: cell.loop.message };
  const { meaning } = cell;
  if (meaning.kind !== 'fault') {
    return { name: cellName(cell), reason: ownProblem(fault).message };
  }
  const { cause } = meaning;
  if (cause === undefined || cause === cell) {
    return { name: cellName(cell), reason: meaning.problem.message };
  }
  return rootOf(cause, fault);
}

/** How bad it is: something that is only not filled in yet is no fault of the person who works. */
export function weighed(problem: Problem, cell: Cell): Problem {
  if (!isMissing(problem.code)) return problem;
  return { ...problem, severity: cell.text?.origin === 'typed' ? 'warning' : 'note' };
}

/** What a formula cell says, from what the evaluator says of it. */
export function resultOfFormula(
  cell: Cell,
  outcome: Outcome,
  cellNumbered: (number: number) => Cell | undefined,
): CellResult {
  if (outcome.state !== 'fault') return outcome;
  const { fault } = outcome;
  const root = cellNumbered(fault.cell);
  const place = placeOfCell(cell);
  if (root === undefined || root === cell) {
    const problem = weighed({ ...ownProblem(fault), place }, cell);
    return { state: 'no-answer', problem };
  }
  return {
    state: 'no-answer',
    problem: workbookProblem('cell-waits', { ...rootOf(root, fault) }, { place }),
  };
}

/** What a cell says that is not calculated; undefined for a formula. */
export function resultOfMeaning(cell: Cell): CellResult | undefined {
  if (cell.loop !== undefined) {
    return { state: 'no-answer', problem: { ...cell.loop, place: placeOfCell(cell) } };
  }
  const { meaning } = cell;
  switch (meaning.kind) {
    case 'blank':
      return blankResult;
    case 'literal':
      return { state: 'value', value: meaning.value };
    case 'fault':
      return { state: 'no-answer', problem: weighed(meaning.problem, cell) };
    case 'formula':
      return undefined;
  }
}
