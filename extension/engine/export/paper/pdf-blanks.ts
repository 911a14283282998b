import { pointsPerMm } from '../pdf-objects.ts';
import type { Html } from './html.ts';
import { elementIn, heightOf, type Block } from './pdf-flow.ts';
import { scaled, type Place } from './pdf-place.ts';
import { classesOf, runsOf, wrapped } from './pdf-text.ts';

/** True for a line to write on. */
export function isBlank(one: string | Html): one is Html {
  return typeof one !== 'string' && classesOf(one).includes('blank');
}

const blankWidth = 40 * pointsPerMm;
const wideBlank = 82 * pointsPerMm;
const blankGap = 16;

/** Lines to write on beside each other, with what belongs on each below it. */
export function blankBlocks(blanks: readonly Html[], place: Place): readonly Block[] {
  const { x, width, parent } = place;
  const face = scaled({ font: 'F1', size: 8.5 }, place);
  const rows: { readonly blank: Html; readonly x: number; readonly wide: number }[][] = [[]];
  let at = x;
  for (const blank of blanks) {
    const wide = classesOf(blank).includes('wide') ? wideBlank : blankWidth;
    if (at > x && at + wide > x + width) {
      rows.push([]);
      at = x;
    }
    rows.at(-1)?.push({ blank, x: at, wide });
    at += wide + blankGap;
  }
  return rows.map((row) => {
    const element = elementIn(parent, 'P');
    const made = row.map((one) => ({
      ...one,
      lines: wrapped(runsOf(one.blank.content, face), one.wide, face),
    }));
    return {
      height: 22 + Math.max(0, ...made.map(({ lines }) => heightOf(lines))),
      before: 2,
      draw: (pen, y) => {
        for (const { x: from, wide, lines } of made) {
          pen.rule(from, from + wide, y + 20);
          pen.marked(element, () => {
            pen.lines(lines, { x: from, y: y + 20 });
          });
        }
      },
    };
  });
}
