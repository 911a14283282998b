import { boxAround, type Point } from '../geometry/outline.ts';
import type { Trace, TracePiece } from '../geometry/trace.ts';
import { fileNumber } from './drawing-styles.ts';
import { escaped } from './escaped.ts';

/** White round an outline, in mm. */
const marginMm = 10;

/** The name of the outline in its file. */
export const traceId = 'edge';

/**
 * A traced outline as an SVG file that a job can name: one unit is 1 mm, curves as curves. Where its
 * zero was measured from is kept in `data-zero`, counted right and down from the page's upper left corner.
 *
 * @source W3C, Scalable Vector Graphics (SVG) 1.1
 */
export function traceSvg({ start, pieces, outline }: Trace, title: string): string {
  const { left, bottom, right, top } = boxAround(outline.points);
  const zero = { x: marginMm - left, y: marginMm + top };
  const on = ({ x, y }: Point): string => `${fileNumber(zero.x + x)} ${fileNumber(zero.y - y)}`;
  const step = ({ to, handles }: TracePiece): string =>
    handles === undefined ? `L${on(to)}` : `C${on(handles[0])} ${on(handles[1])} ${on(to)}`;
  const across = fileNumber(right - left + 2 * marginMm);
  const down = fileNumber(top - bottom + 2 * marginMm);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${across}mm" height="${down}mm" viewBox="0 0 ${across} ${down}" data-zero="${fileNumber(zero.x)} ${fileNumber(zero.y)}">`,
    `  <title>${escaped(title)}</title>`,
    `  <path id="${traceId}" fill="none" stroke="black" stroke-width="0.35" d="M${on(start)}${pieces.map(step).join('')}Z"/>`,
    '</svg>',
    '',
  ].join('\n');
}
