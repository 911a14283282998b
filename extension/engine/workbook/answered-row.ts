import type { AnsweredCell, AnsweredRow } from './answers.ts';
import { blankResult, type Cell, type Row } from './row.ts';

const blankCells = new Map<string, AnsweredCell>();

/** A cell that says nothing: one for each column, for most cells that are asked for are blank. */
function blankCell(column: string): AnsweredCell {
  const known = blankCells.get(column);
  if (known !== undefined) return known;
  const said = { text: undefined, origin: 'typed', formula: false, result: blankResult } as const;
  const blank = { column, ...said };
  blankCells.set(column, blank);
  return blank;
}

function answeredCell(cell: Cell): AnsweredCell {
  const { column, text, result } = cell;
  if (text === undefined)
    return { column, text: undefined, origin: 'typed', formula: false, result };
  return {
    column,
    text: text.text,
    origin: text.origin,
    formula: text.text.startsWith('='),
    result,
  };
}

/** A row as others see it: what it says now, kept even when it says something else later. */
export function answeredRow(row: Row): AnsweredRow {
  const cells = new Map<string, AnsweredCell>();
  row.cells.forEach((cell, column) => {
    if (cell.text === undefined && cell.result.state === 'blank') return;
    cells.set(column, (cell.answered ??= answeredCell(cell)));
  });
  const { table, id, occurrence, kind, draws } = row;
  return {
    table,
    id,
    occurrence,
    kind,
    draws,
    broken: row.source.broken,
    cell: (column) => cells.get(column) ?? blankCell(column),
  };
}
