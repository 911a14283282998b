import type { CellResult } from './answers.ts';
import { resultOfMeaning } from './results.ts';
import { cellName, placeOfCell, type Cell } from './row.ts';
import { workbookProblem } from './workbook-problems.ts';
import type { WorkbookCore } from './workbook-core.ts';

/** True when a cell would, by any way, come back to the one at this place. */
function leadsTo(cells: readonly Cell[], target: Cell): boolean {
  const seen = new Set<Cell>(cells);
  for (const cell of seen) {
    if (cell.row === target.row && cell.column === target.column) return true;
    for (const read of cell.reads) seen.add(read);
  }
  return false;
}

/** The answer a cell would give with another text; nothing in the workbook changes. */
export function tryCell(cell: Cell, text: string, core: WorkbookCore): CellResult {
  const trial: Cell = {
    ...cell,
    text: { text, origin: 'typed' },
    loop: undefined,
    placed: undefined,
  };
  if (text.trim() === '') return { state: 'blank' };
  const { meaning, type, reads } = core.understand(trial);
  Object.assign(trial, { meaning, type });
  const result = resultOfMeaning(trial);
  if (result !== undefined) return result;
  if (meaning.kind !== 'formula') return { state: 'blank' };
  if (leadsTo(reads, cell)) {
    const path = `${cellName(cell)} needs ${cellName(cell)}`;
    const problem = workbookProblem('cell-loop', { path }, { place: placeOfCell(cell) });
    return { state: 'no-answer', problem };
  }
  return core.result(trial, core.evaluation.tryFormula(meaning));
}
