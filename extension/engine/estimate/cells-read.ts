import { differingPlaces } from '../units/renewed-list.ts';
import type { AnsweredCell, AnsweredRow } from '../workbook/answers.ts';
import { isSameRow } from '../workbook/row-view.ts';

/** Cells that were read of a row, each once. */
export type CellsRead = readonly AnsweredCell[];

/** A row that keeps a note of every cell that is read of it. */
export interface NotedRow {
  readonly row: AnsweredRow;
  /** The cells that were read until now. */
  readonly read: () => CellsRead;
}

/**
 * The row with a note of what is read of its cells. Its kind and its draws are no cells: whoever uses
 * these compares them.
 */
export function notedRow(row: AnsweredRow): NotedRow {
  const read: AnsweredCell[] = [];
  const cell = (column: string): AnsweredCell => {
    const known = read.find((one) => one.column === column);
    if (known !== undefined) return known;
    const found = row.cell(column);
    read.push(found);
    return found;
  };
  return { row: { ...row, cell }, read: () => read.slice() };
}

/** True where both are written alike, whatever they come to. */
export function isWrittenTheSame(one: AnsweredCell, other: AnsweredCell): boolean {
  return one.text === other.text && one.origin === other.origin && one.formula === other.formula;
}

/** True for the same answer: the same object, but for cells that say nothing at all. */
export function isSameCell(one: AnsweredCell, other: AnsweredCell): boolean {
  return one === other || (isWrittenTheSame(one, other) && one.result === other.result);
}

/** True where every cell that was read still says what it said: what was made of them stands. */
export function readsTheSame(read: CellsRead, row: AnsweredRow): boolean {
  return read.every((cell) => isSameCell(cell, row.cell(cell.column)));
}

/** True where rows came, went or moved, or one of these columns of a row says something else. */
export function columnsMoved(
  before: readonly AnsweredRow[],
  now: readonly AnsweredRow[],
  columns: readonly string[],
): boolean {
  const places = differingPlaces(before, now);
  if (places === undefined) return true;
  return places.some((place) => {
    const [old, row] = [before[place], now[place]];
    return old === undefined || row === undefined || saysElse(old, row, columns);
  });
}

/** True where it is another row, cannot be read any more or can again, or one of these columns says something else. */
export function saysElse(old: AnsweredRow, row: AnsweredRow, columns: readonly string[]): boolean {
  return (
    !isSameRow(old, row) ||
    old.broken !== row.broken ||
    columns.some((column) => !isSameCell(old.cell(column), row.cell(column)))
  );
}
