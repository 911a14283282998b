import type { Place } from '../problems.ts';
import type { AnsweredRow } from '../workbook/answers.ts';

export { baseIn, nameOf, quantityIn, shapeIn, wordIn } from '../workbook/row-cells.ts';
export { shownCell } from '../workbook/shown-cell.ts';

/** The place of a cell, or of the row where no column is named. */
export function placeOf(row: AnsweredRow, column?: string): Place {
  return {
    table: row.table,
    row: row.id,
    occurrence: row.occurrence,
    ...(column === undefined ? {} : { column }),
  };
}
