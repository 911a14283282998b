import type { Box, Point } from '../geometry/outline.ts';

/**
 * What a mark of a drawing is. Colours, widths and dashes follow from it, in the theme of a screen or
 * black on paper; on paper and in files each role is a layer.
 */
export type Role =
  /** Outline of a part, to be cut. */
  | 'outline'
  /** An opening to be cut inside a part. */
  | 'hole'
  /** Another part, shown for its place. */
  | 'part'
  | 'ring'
  | 'baffle'
  | 'skin'
  | 'driver'
  /** What must not be touched: window, dash, seat. */
  | 'limit'
  | 'seam'
  | 'aim'
  | 'grain'
  | 'fold'
  | 'kerf'
  | 'offcut'
  | 'waste'
  | 'axis'
  | 'dimension'
  | 'register'
  | 'scale'
  | 'note';

/** A row that a mark stands for. */
export interface DrawnRow {
  readonly table: string;
  readonly id: string;
}

/** A line through points or, closed, an area. */
export interface LineMark {
  readonly kind: 'line';
  readonly role: Role;
  readonly points: readonly Point[];
  readonly closed: boolean;
  /** Areas are filled with a tint of their role; loops of `holes` are left out. */
  readonly filled?: boolean;
  readonly holes?: readonly (readonly Point[])[];
  readonly arrow?: boolean;
  readonly row?: DrawnRow;
  /** Row that it moves with when that is placed anew, where it is another than its own. */
  readonly owner?: DrawnRow;
  /** Colour from a scale between 0 and 1, in place of the role's. */
  readonly heat?: number;
}

/** Words at a point. */
export interface TextMark {
  readonly kind: 'text';
  readonly role: Role;
  readonly at: Point;
  readonly text: string;
  /** Height of a capital letter, in mm of the drawing; 0 for a size that suits the screen. */
  readonly height: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Counter-clockwise, in radians. */
  readonly angle?: number;
  readonly row?: DrawnRow;
  /** Row that it moves with when that is placed anew, where it is another than its own. */
  readonly owner?: DrawnRow;
}

export type Mark = LineMark | TextMark;

/** A drawing in mm, y up, at full size. */
export interface Drawing {
  /** A word for files: `plan`, `base_left`. */
  readonly id: string;
  readonly title: string;
  /** What it shows, in sentences, for who cannot see it. */
  readonly words: readonly string[];
  readonly box: Box;
  readonly marks: readonly Mark[];
}
