import type { Table } from './greedy.ts';
import type { Piece, Sheet } from './sheet.ts';

/** A table that is changed as the search goes on. */
export interface State<Own extends Sheet> {
  readonly sheets: Own[];
  left: readonly Piece[];
  readonly price: number;
  /** How unevenly all sheets are filled, in whole shares of `evenly`. */
  uneven: number;
}

/** What a step would make of a few sheets of a state. */
export interface Change<Own extends Sheet> {
  readonly at: readonly number[];
  readonly sheets: readonly Own[];
  readonly left: readonly Piece[];
  readonly uneven: number;
}

// Whole numbers add up to the same sum in any order, so what a state costs does not hang on its past.
const evenly = 2 ** 30;

/** How unevenly a sheet is filled, in whole shares. */
export function unevenOf({ used, stock }: Sheet): number {
  const free = 1 - used / stock.area;
  return Math.round(free * free * evenly);
}

/** A table made ready to be changed. */
export function stateOf<Own extends Sheet>({ sheets, left, price }: Table<Own>): State<Own> {
  const uneven = sheets.reduce((sum, sheet) => sum + unevenOf(sheet), 0);
  return { sheets: [...sheets], left, price, uneven };
}

/** The state itself with a step taken. */
export function change<Own extends Sheet>(state: State<Own>, step: Change<Own>): State<Own> {
  step.at.forEach((at, order) => {
    const sheet = step.sheets[order];
    if (sheet !== undefined) state.sheets[at] = sheet;
  });
  state.left = step.left;
  state.uneven = step.uneven;
  return state;
}

export interface Left {
  readonly area: number;
  readonly count: number;
}

/** Area and number of the pieces left. */
export function leftOf(pieces: readonly Piece[]): Left {
  let area = 0;
  for (const piece of pieces) area += piece.area;
  return { area, count: pieces.length };
}

/**
 * What a state with these pieces left is held to cost; `mean` is the area of a sheet. Pieces left weigh
 * by their area, and each a little more, so that few large ones are left rather than many small ones;
 * sheets filled unevenly leave room that can be used.
 */
export function costOf(
  state: State<Sheet>,
  left: Left,
  mean: number,
  uneven = state.uneven,
): number {
  const whole = left.area + 0.02 * mean * left.count;
  const sheets = state.sheets.length;
  return sheets === 0 ? whole : whole - (0.15 * mean * (uneven / evenly)) / sheets;
}
