import type { AnsweredCell, AnsweredRow, CellOrigin, CellResult } from './answers.ts';
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

// What is made anew with each edit are classes: of literals that stay for long when a job is opened,
// V8 puts all later ones with the old, and what they hold stays with them.
class SaidCell implements AnsweredCell {
  readonly column: string;
  readonly text: string | undefined;
  readonly origin: CellOrigin;
  readonly formula: boolean;
  readonly result: CellResult;

  constructor({ column, text, result }: Cell) {
    this.column = column;
    this.text = text?.text;
    this.origin = text?.origin ?? 'typed';
    this.formula = text?.text.startsWith('=') === true;
    this.result = result;
  }
}

/** Cells that say something now. */
function cellsOf(row: Row): readonly AnsweredCell[] {
  const cells: AnsweredCell[] = [];
  for (const cell of row.cells.values()) {
    if (cell.text !== undefined || cell.result.state !== 'blank')
      cells.push((cell.answered ??= new SaidCell(cell)));
  }
  return cells.slice();
}

/** Places by column; those of last time while the same columns say something. */
function placesOf(row: Row, cells: readonly AnsweredCell[]): ReadonlyMap<string, number> {
  const known = row.places;
  const same =
    known?.size === cells.length && cells.every(({ column }, place) => known.get(column) === place);
  return same ? known : new Map(cells.map(({ column }, place) => [column, place]));
}

class SaidRow implements AnsweredRow {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  readonly kind: string;
  readonly draws: readonly string[];
  readonly broken: boolean;
  readonly cell: (column: string) => AnsweredCell;

  constructor(row: Row, cell: (column: string) => AnsweredCell) {
    this.table = row.table;
    this.id = row.id;
    this.occurrence = row.occurrence;
    this.kind = row.kind;
    this.draws = row.draws;
    this.broken = row.source.broken;
    this.cell = cell;
  }
}

/** A row as others see it: what it says now, kept even when it says something else later. */
export function answeredRow(row: Row): AnsweredRow {
  const cells = cellsOf(row);
  const places = placesOf(row, cells);
  row.places = places;
  return new SaidRow(row, (column) => cells[places.get(column) ?? -1] ?? blankCell(column));
}
