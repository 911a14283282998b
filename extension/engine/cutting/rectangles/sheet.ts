import type { Chance } from '../chance.ts';

/**
 * A rectangle to be cut; sizes in whole thousandths of a millimetre, kerf included. `length` lies
 * along the sheet's length unless it is turned.
 */
export interface Piece {
  readonly index: number;
  readonly length: number;
  readonly width: number;
  readonly area: number;
  /** May lie with its length across the sheet. */
  readonly turns: boolean;
}

/** Sheets of one size; sizes in whole thousandths of a millimetre, trim taken off and one kerf added. */
export interface SheetStock {
  readonly index: number;
  readonly length: number;
  readonly width: number;
  readonly area: number;
  readonly price: number;
  /** How many there are; Infinity where more can be bought. */
  readonly limit: number;
}

/** Where a piece lies on its sheet: corner nearest the origin, x along the length. */
export interface Lying {
  readonly piece: Piece;
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

/** An opened sheet with what lies on it. */
export interface Sheet {
  readonly stock: SheetStock;
  /** Area of the pieces on it. */
  readonly used: number;
  readonly count: number;
}

/** A free place for a piece; the lower its score, the better it fits by the rule asked for. */
export interface Spot {
  readonly score: number;
  readonly turned: boolean;
}

/** A sheet with some pieces taken off. */
export interface Ruined<Own extends Sheet> {
  readonly sheet: Own;
  readonly off: Piece[];
  /** What that took, in places looked at. */
  readonly work: number;
}

/**
 * One way of cutting sheets: where pieces may lie and how they are taken off again. Sheets are never
 * changed: each step gives a new one.
 */
export interface Cutting<Own extends Sheet, Place extends Spot> {
  /** Number of rules `find` knows. */
  readonly rules: number;
  readonly open: (stock: SheetStock) => Own;
  /** The best place by a rule, if its score is below `under`. */
  readonly find: (sheet: Own, piece: Piece, rule: number, under: number) => Place | undefined;
  readonly put: (sheet: Own, piece: Piece, place: Place) => Own;
  /** Takes some pieces off, chosen by chance. */
  readonly ruin: (sheet: Own, chance: Chance) => Ruined<Own>;
  readonly lying: (sheet: Own) => readonly Lying[];
  /** Number of free places it keeps: what `find` has to look through. */
  readonly places: (sheet: Own) => number;
}
