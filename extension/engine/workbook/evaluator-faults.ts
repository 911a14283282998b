import { CellError, type DetailedCellError, ErrorType } from 'hyperformula';
import type { WorkbookProblemCode } from './workbook-problems.ts';

/** Why the evaluator gave no answer. */
export interface EvaluatorFault {
  readonly code: WorkbookProblemCode;
  /** Number of the cell at which it began; -1 for a formula that stands in none. */
  readonly cell: number;
  /** Sentence, where the code leaves it open. */
  readonly reason: string;
}

/** An error value that carries the fault through everything that depends on it. */
export function faultValue(fault: EvaluatorFault): CellError {
  return new CellError(ErrorType.VALUE, `${fault.code} ${fault.cell} ${fault.reason}`);
}

const carried = /^([a-z-]+) (-?\d+) ([\s\S]*)$/;

const nativeCodes: Readonly<Record<string, WorkbookProblemCode>> = {
  [ErrorType.DIV_BY_ZERO]: 'divides-by-zero',
  [ErrorType.NUM]: 'no-number',
};

/** Reads the fault back from an error; `cellAt` finds the cell at an address such as `part!C5`. */
export function faultOf(
  error: DetailedCellError,
  cellAt: (address: string) => number | undefined,
): EvaluatorFault {
  const found = carried.exec(error.message);
  if (found !== null) {
    const [, code = '', cell = '', reason = ''] = found;
    return { code: code as WorkbookProblemCode, cell: Number(cell), reason };
  }
  const cell = error.address === undefined ? -1 : (cellAt(error.address) ?? -1);
  const code = nativeCodes[error.type] ?? 'not-calculated';
  return { code, cell, reason: error.message === '' ? error.value : error.message };
}
