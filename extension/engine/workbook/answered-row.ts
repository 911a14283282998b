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

/** Cells that say something now. */
function cellsOf(row: Row): readonly AnsweredCell[] {
  const cells: AnsweredCell[] = [];
  for (const cell of row.cells.values()) {
    if (cell.text !== undefined || cell.result.state !== 'blank')
      cells.push((cell.answered ??= answeredCell(cell)));
  }
  return cells;
}

/** Places by column; those of last time while the same columns say something. */
function placesOf(row: Row, cells: readonly AnsweredCell[]): ReadonlyMap<string, number> {
  const known = row.places;
  const same =
    known?.size === cells.length && cells.every(({ column }, place) => known.get(column) === place);
  return same ? known : new Map(cells.map(({ column }, place) => [column, place]));
}

/** A row as others see it: what it says now, kept even when it says something else later. */
export function answeredRow(row: Row): AnsweredRow {
  const cells = cellsOf(row);
  const places = placesOf(row, cells);
  row.places = places;
  const { table, id, occurrence, kind, draws } = row;
  return {
    table,
    id,
    occurrence,
    kind,
    draws,
    broken: row.source.broken,
    cell: (column) => cells[places.get(column) ?? -1] ?? blankCell(column),
  };
}
