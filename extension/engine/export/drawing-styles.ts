import type { Role } from '../drawing/drawing.ts';

/** How a role is drawn in black on paper. */
export interface PaperStyle {
  /** Line width in mm. */
  readonly width: number;
  /** Lengths of strokes and gaps in mm; empty for a full line. */
  readonly dashes: readonly number[];
  /** Grey from 0 (black) to 1 (white). */
  readonly grey: number;
}

const plain: PaperStyle = { width: 0.25, dashes: [], grey: 0 };
const fine: PaperStyle = { width: 0.13, dashes: [], grey: 0 };

/** What each role looks like on paper; every role is a layer of its own in files. */
export const paperStyles: Readonly<Record<Role, PaperStyle>> = {
  outline: { ...plain, width: 0.35 },
  hole: plain,
  part: { ...plain, grey: 0.4 },
  ring: { ...fine, dashes: [4, 1.5] },
  baffle: fine,
  skin: plain,
  driver: { ...fine, dashes: [1, 1] },
  limit: { ...plain, dashes: [6, 1.5, 1, 1.5] },
  seam: { ...fine, dashes: [8, 2] },
  aim: plain,
  grain: plain,
  fold: { ...fine, dashes: [3, 2] },
  kerf: fine,
  offcut: { ...fine, grey: 0.4 },
  waste: { ...fine, grey: 0.6 },
  axis: { ...fine, dashes: [8, 1.5, 1.5, 1.5] },
  dimension: fine,
  register: fine,
  scale: plain,
  note: fine,
};

/** Every role in the order in which layers are listed. */
export const roles: readonly Role[] = Object.keys(paperStyles).filter(isRole);

function isRole(word: string): word is Role {
  return Object.hasOwn(paperStyles, word);
}

/** A number of mm as drawing files write it: to a ten-thousandth, without needless digits. */
export function fileNumber(value: number): string {
  const text = value.toFixed(4).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

/** Height of letters where a drawing leaves it to the screen, in mm. */
export const letterHeight = 3.5;
