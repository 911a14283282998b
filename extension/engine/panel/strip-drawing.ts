import type { Drawing, Mark } from '../drawing/drawing.ts';
import { boxAround } from '../geometry/outline.ts';
import { stripStations, type StripStation } from '../skin/ring-plan.ts';
import {
  dimension,
  drawnRow,
  lengthText,
  letteringOf,
  line,
  loop,
  reached,
  words,
  type Lettering,
} from './marks.ts';
import type { PicturedPanel, PicturedRing } from './pictured-panel.ts';

/** The edge is drawn through this many places, a multiple of the marked ones. */
const steps = 96;
const marked = 12;

/** Height of the strip itself: less the base it stands on and a baffle that lies on it. */
function standingHeights(
  pictured: PicturedRing,
  { thickness }: PicturedPanel,
): readonly StripStation[] {
  const { ring, onTop } = pictured;
  const lower = ring.build === 'square_wall' ? onTop : onTop / Math.cos(ring.tilt);
  return stripStations(ring, thickness, steps).map(({ along, height }) => ({
    along,
    height: height - lower,
  }));
}

/** Heights that the bench marks on a strip, from the seam round to the seam. */
export function markedHeights(
  pictured: PicturedRing,
  panel: PicturedPanel,
): readonly StripStation[] {
  return standingHeights(pictured, panel).filter((_, index) => index % (steps / marked) === 0);
}

function stripWords(pictured: PicturedRing, panel: PicturedPanel): readonly string[] {
  const shown = (base: number): string => lengthText(base, panel.settings);
  const heights = markedHeights(pictured, panel);
  const whole = heights.at(-1)?.along ?? 0;
  const { cutLength } = pictured;
  const cut =
    cutLength === undefined ? '' : ` Cut it ${shown(cutLength)} long: on its middle, lap included.`;
  return [
    `Wall of ${pictured.name} laid flat at its outside: ${shown(whole)} round, from ${pictured.seam ? 'the seam on the high side to the seam' : 'the high side to the high side'} again.${cut}`,
    `Height at ${String(marked)} equal steps of ${shown(whole / marked)}: ${heights
      .map(({ height }) => shown(height))
      .join(', ')}.`,
  ];
}

/** Which steps are told first where there is no room for all: ends, middle, quarters, the rest. */
const telling = [marked, marked / 2, marked / 4, 1];

function tellingFirst(heights: readonly StripStation[]): readonly StripStation[] {
  const rank = (index: number): number => telling.findIndex((every) => index % every === 0);
  return heights
    .map((station, index) => ({ station, rank: rank(index) }))
    .toSorted((one, two) => one.rank - two.rank)
    .map(({ station }) => station);
}

/** A line and a figure at each marked place, and which sides they are. */
function heightMarks(
  pictured: PicturedRing,
  panel: PicturedPanel,
  { height: letter }: Lettering,
): readonly Mark[] {
  const heights = markedHeights(pictured, panel);
  const row = drawnRow(pictured.row);
  const above = Math.max(...heights.map(({ height }) => height)) + letter * 2.6;
  const high = pictured.seam ? 'seam, high side' : 'high side';
  const side = (along: number, text: string, anchor: 'start' | 'middle'): Mark =>
    words('note', { x: along, y: above }, text, { height: letter, anchor });
  return [
    ...heights.map(({ along, height }, index) => {
      const role = index % marked === 0 && pictured.seam ? 'seam' : 'fold';
      const ends = [
        { x: along, y: 0 },
        { x: along, y: height },
      ];
      return line(role, ends, { row });
    }),
    ...tellingFirst(heights).map(({ along, height }) => {
      const text = lengthText(height, panel.settings);
      return words('dimension', { x: along, y: height + letter * 0.6 }, text, { height: letter });
    }),
    side(0, high, 'start'),
    side(heights[marked / 2]?.along ?? 0, 'low side', 'middle'),
  ];
}

/** The wall of a ring as a flat strip, with its height at twelve equal steps from its high side. */
export function stripDrawing(pictured: PicturedRing, panel: PicturedPanel): Drawing {
  const stations = standingHeights(pictured, panel);
  const whole = stations.at(-1)?.along ?? 0;
  const lettering = letteringOf(whole);
  const edge = [
    { x: 0, y: 0 },
    { x: whole, y: 0 },
    ...stations.map(({ along, height }) => ({ x: along, y: height })).toReversed(),
  ];
  const round = {
    from: { x: 0, y: 0 },
    to: { x: whole, y: 0 },
    at: -lettering.step,
    along: 'x',
    text: lengthText(whole, panel.settings),
  } as const;
  const marks: readonly Mark[] = [
    loop('outline', edge, { row: drawnRow(pictured.row), filled: true }),
    ...heightMarks(pictured, panel, lettering),
    ...dimension(round, lettering),
  ];
  return {
    id: `strip_${pictured.row.id}`,
    title: `${pictured.name}: strip`,
    words: stripWords(pictured, panel),
    box: boxAround(reached(marks)),
    marks,
  };
}
