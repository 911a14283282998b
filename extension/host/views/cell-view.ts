import {
  shownCell,
  shownValue,
  type AnsweredCell,
  type Problem,
  type UnitSettings,
} from '../../engine/index.ts';
import type { CellView } from '../../protocol/views.ts';

export { shownCell, shownValue };

export const blankCell: CellView = {
  shown: '',
  typed: '',
  look: 'blank',
  formula: false,
  message: '',
  severity: '',
};

function lookOf(cell: AnsweredCell): CellView['look'] {
  if (cell.result.state === 'no-answer') return 'error';
  if (cell.origin === 'typed' && cell.text !== undefined) return 'typed';
  if (cell.result.state === 'blank') return 'blank';
  return cell.origin === 'computed' ? 'computed' : 'default';
}

/** A cell of the grid or of the row card, with what is wrong with it or why it has no answer. */
export function cellView(
  cell: AnsweredCell,
  settings: UnitSettings,
  told: Pick<Problem, 'message' | 'severity'> | undefined,
): CellView {
  return {
    shown: shownCell(cell, settings),
    typed: cell.origin === 'typed' ? (cell.text ?? '') : '',
    look: lookOf(cell),
    formula: cell.formula,
    message: told?.message ?? '',
    severity: told?.severity ?? '',
  };
}
