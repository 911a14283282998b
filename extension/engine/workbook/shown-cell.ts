import { showShape } from '../geometry/shape-text.ts';
import type { CellValue } from '../formula/value.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { showQuantity } from '../units/show.ts';
import type { AnsweredCell } from './answers.ts';

/** Columns whose plain numbers are shares and read better as percent. */
const shareColumns = new Set(['percent', 'waste', 'solids', 'near']);

/** A value as people read it, in the job's units. */
export function shownValue(value: CellValue, column: string, settings: UnitSettings): string {
  switch (value.kind) {
    case 'quantity': {
      const last = column.slice(column.lastIndexOf('.') + 1);
      return showQuantity(value, settings, shareColumns.has(last) ? '%' : undefined).text;
    }
    case 'text':
      return value.text;
    case 'yes-no':
      return value.yes ? 'yes' : 'no';
    case 'choice':
      return value.word.replaceAll('_', ' ');
    case 'shape':
      return showShape(value.shape, settings);
    case 'link':
      return value.id;
  }
}

/** True for a literal whose own spelling says more than its number: `25 each`, `2 %`, a date. */
function keepsSpelling(cell: AnsweredCell, value: CellValue): boolean {
  if (cell.formula || cell.origin !== 'typed') return false;
  if (value.kind !== 'quantity') return false;
  const { length, mass, time, temperature, money, tag } = value.dimension;
  return tag === undefined && [length, mass, time, temperature, money].every((n) => n === 0);
}

/** What is shown of a cell: its value in the job's units, or its text while it has no answer. */
export function shownCell(cell: AnsweredCell, settings: UnitSettings): string {
  if (cell.result.state === 'value') {
    const { value } = cell.result;
    if (cell.text !== undefined && keepsSpelling(cell, value)) return cell.text;
    const shown = shownValue(value, cell.column, settings);
    return cell.result.estimate === true && !shown.startsWith('≈') ? `≈ ${shown}` : shown;
  }
  if (cell.result.state === 'blank') return cell.origin === 'typed' ? (cell.text ?? '') : '';
  return cell.formula || cell.origin !== 'typed' ? 'no answer' : (cell.text ?? '');
}
