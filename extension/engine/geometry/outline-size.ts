import type { Problem } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { outlineProblem } from './outline-problems.ts';
import { lengthWords } from './outline-words.ts';
import type { TracedOutline } from './traced-outline.ts';

/** Nothing smaller is cut as a part of a panel, in mm. */
const leastMm = 10;

/** Nothing larger goes through a door, in mm. */
const mostMm = 6000;

function sizesOf({ box }: TracedOutline): readonly [number, number] {
  return [box.right - box.left, box.top - box.bottom];
}

/** Whether an outline is too small or too large for a part of a panel. */
export function isPartSize(outline: TracedOutline): boolean {
  const longest = Math.max(...sizesOf(outline));
  return longest >= leastMm && longest <= mostMm;
}

/** Why an outline out of a drawing cannot be a part: mostly its units are others than was thought. */
export function outlineSizeFault(
  outline: TracedOutline,
  asking: { readonly what: string; readonly address: string; readonly settings: UnitSettings },
): Problem | undefined {
  if (isPartSize(outline)) return undefined;
  const { settings, what, address } = asking;
  const [length, width] = sizesOf(outline);
  const isTiny = Math.max(length, width) < leastMm;
  return outlineProblem(isTiny ? 'outline-tiny' : 'outline-huge', {
    what,
    address,
    length: lengthWords(length, settings),
    width: lengthWords(width, settings),
    unit: isTiny ? '1in' : '1mm',
  });
}

/** The sizes in words that a typed polygon must keep to. */
export function sizeRange(settings: UnitSettings): {
  readonly least: string;
  readonly most: string;
} {
  return { least: lengthWords(leastMm, settings), most: lengthWords(mostMm, settings) };
}
