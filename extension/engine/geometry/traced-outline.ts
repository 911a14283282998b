import { boxAround, loopLength, signedArea, type Box, type Outline } from './outline.ts';

/** An outline of its own form, measured once: in mm, counter-clockwise, about its own zero. */
export interface TracedOutline extends Outline {
  /** Area inside it, in mm². */
  readonly area: number;
  /** Its length, in mm. */
  readonly perimeter: number;
  readonly box: Box;
  /** A text that two outlines share only if they are the same. */
  readonly print: string;
}

// Two 32-bit multiplicative hashes over the coordinates' own bits: 64 bits of difference.
function printOf(points: Outline['points']): string {
  const numbers = new Float64Array(points.flatMap(({ x, y }) => [x, y]));
  let [one, two] = [0x811c9dc5, 0x9e3779b9];
  for (const byte of new Uint8Array(numbers.buffer)) {
    one = Math.imul(one ^ byte, 0x01000193);
    two = Math.imul(two ^ byte, 0x85ebca6b) + 1;
  }
  const hex = (part: number): string => (part >>> 0).toString(16).padStart(8, '0');
  return `${String(points.length)}:${hex(one)}${hex(two)}`;
}

/** Measures an outline; `exact` are measures that are known better than its straight pieces tell. */
export function traced(
  outline: Outline,
  exact: Partial<Pick<TracedOutline, 'area' | 'perimeter'>> = {},
): TracedOutline {
  return {
    ...outline,
    area: exact.area ?? Math.abs(signedArea(outline.points)),
    perimeter: exact.perimeter ?? loopLength(outline.points),
    box: boxAround(outline.points),
    print: printOf(outline.points),
  };
}
