/** Stock that parts are cut from; sizes in mm. */
export interface Stock {
  readonly id: string;
  /** Along the sheet's long side, the strip, or one selling unit of a roll. */
  readonly length: number;
  /** Across; 0 for strips. */
  readonly width: number;
  /** Of one sheet, strip or selling unit, in any money. */
  readonly price: number;
  /** How many there are; left out where more can be bought. */
  readonly limit?: number;
}

/** Degrees by which a part may be turned, counter-clockwise. */
export type Rotation = number;

/** A part to be cut, with how many of it; sizes in mm. */
export interface Part {
  readonly id: string;
  readonly length: number;
  readonly width: number;
  readonly count: number;
  /** Ways it may lie; all four quarter turns where left out, none but 0 with nap. */
  readonly rotations?: readonly Rotation[];
  /** Outline as points, where it is not a rectangle; may be mirrored only as a part of its own. */
  readonly points?: readonly (readonly [number, number])[];
  readonly holes?: readonly (readonly (readonly [number, number])[])[];
}

/** How long a layout may be searched for: in work done, never in seconds. */
export type Effort = 'quick' | 'live' | 'refine' | 'long';

/** A part that stays where it lies; x and y are of the corner of its box nearest the origin, mm. */
export interface Fixed {
  /** What it is called where it is told of. */
  readonly id: string;
  readonly part: string;
  readonly stock: string;
  /** Which of the opened sheets, from 0; the last where fewer are opened. */
  readonly index: number;
  readonly x: number;
  readonly y: number;
  readonly rotation: Rotation;
}

interface Common {
  readonly stocks: readonly Stock[];
  readonly parts: readonly Part[];
  /** Width of the cut, mm. */
  readonly kerf?: number;
  /** Taken off every edge of the stock before parts are cut, mm. */
  readonly trim?: number;
  readonly effort?: Effort;
  readonly seed?: number;
}

export interface RectanglesInstance extends Common {
  readonly kind: 'rectangles';
  readonly fixed?: readonly Fixed[];
  /** Straight cuts from edge to edge (a saw), or anywhere (jigsaw, router). */
  readonly method?: 'guillotine' | 'free';
}

export interface OutlinesInstance extends Common {
  readonly kind: 'outlines';
  readonly fixed?: readonly Fixed[];
}

export interface StripsInstance extends Common {
  readonly kind: 'strips';
  /** Parts may be put together from pieces that overlap by `lap`, none shorter than `least`. */
  readonly joints?: { readonly lap: number; readonly least: number };
}

/** Cloth off one roll; the stock's length is the unit it is sold by, its price that of one unit. */
export interface BoltInstance extends Common {
  readonly kind: 'bolt';
  /** Of rectangles only. */
  readonly fixed?: readonly Fixed[];
  /** Parts start at whole repeats of the pattern: along the roll, across it; 0 for none. */
  readonly repeat?: { readonly along: number; readonly across: number };
}

export interface PackOffer {
  readonly id?: string;
  readonly size: number;
  readonly price: number;
  readonly limit?: number;
  /** Prices of one pack from so many on. */
  readonly breaks?: readonly { readonly from: number; readonly price: number }[];
  /** Fewest packs sold at a time. */
  readonly least?: number;
}

export interface PacksInstance {
  readonly kind: 'packs';
  readonly need: number;
  readonly packs: readonly PackOffer[];
  /** What the packs must cost together at least: the smallest order that is taken. */
  readonly minimum?: number;
}

/** Everything a layout is made from; the same instance gives the same answer on every machine. */
export type CutInstance =
  RectanglesInstance | OutlinesInstance | StripsInstance | BoltInstance | PacksInstance;

/** Where one part lies; x along the stock's length, y across it, from the stock's corner, mm. */
export interface Placement {
  readonly part: string;
  readonly stock: string;
  /** Which of the opened sheets, from 0. */
  readonly index: number;
  /** Corner of the box around the part nearest the origin, as it lies. */
  readonly x: number;
  readonly y: number;
  readonly rotation: Rotation;
  readonly mirrored: boolean;
  /** The id of what holds it there, where it was not the search's to place. */
  readonly fixed?: string;
  /** Size of that box. */
  readonly length: number;
  readonly width: number;
}

/** One straight cut from edge to edge of what is left in hand, in the order of sawing. */
export interface SawCut {
  /** Which of the opened sheets, from 0. */
  readonly index: number;
  /** Runs across the length at `at` from the sheet's end, or along it at `at` from its side; mm. */
  readonly way: 'across' | 'along';
  readonly at: number;
  /** Where the cut starts and ends on the other side. */
  readonly from: number;
  readonly to: number;
}

/** A sheet, strip or length of roll as it is cut. */
export interface CutPattern {
  readonly stock: string;
  /** How many are cut in this way. */
  readonly times: number;
  readonly pieces: readonly {
    readonly part: string;
    readonly length: number;
    readonly count: number;
  }[];
  /** Length left at the end (strips), mm. */
  readonly left: number;
}

export interface CutAnswer {
  readonly kind: CutInstance['kind'];
  /** Sheets, strips, selling units or packs. */
  readonly count: number;
  readonly price: number;
  /** No layout needs fewer. */
  readonly bound: number;
  /** No layout costs less. */
  readonly priceBound: number;
  readonly proven: boolean;
  /** Share of the opened stock that becomes parts. */
  readonly utilisation: number;
  /** Length of roll taken, mm (bolts). */
  readonly length?: number;
  readonly sheets: readonly { readonly stock: string; readonly utilisation: number }[];
  readonly placements: readonly Placement[];
  readonly patterns: readonly CutPattern[];
  readonly cuts: readonly SawCut[];
  /** Parts that lie on no stock, with how many of each. */
  readonly unplaced: readonly { readonly part: string; readonly count: number }[];
}

/** Hears how much of the work is done, 0 to 1. */
export type Report = (share: number) => void;
