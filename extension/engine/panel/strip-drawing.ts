import type { Drawing, Mark } from '../drawing/drawing.ts';
import { boxAround } from '../geometry/outline.ts';
import { stripStations, type StripStation } from '../skin/ring-plan.ts';
import {
  angleText,
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
import { seamDirection, type PicturedPanel, type PicturedRing } from './pictured-panel.ts';

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
  return stripStations(ring, thickness, steps, seamDirection(pictured)).map(
    ({ along, height }) => ({
      along,
      height: height - lower,
    }),
  );
}

/** Heights that the bench marks on a strip, from the seam round to the seam. */
export function markedHeights(
  pictured: PicturedRing,
  panel: PicturedPanel,
): readonly StripStation[] {
  return standingHeights(pictured, panel).filter((_, index) => index % (steps / marked) === 0);
}

/** Where a strip begins and ends. */
function startWords({ seam, seamTurn }: PicturedRing, { settings }: PicturedPanel): string {
  if (seamTurn !== undefined)
    return `the seam, ${angleText(seamTurn, settings)} from straight up, to the seam`;
  return seam ? 'the seam on the high side to the seam' : 'the high side to the high side';
}

function stripWords(pictured: PicturedRing, panel: PicturedPanel): readonly string[] {
  const shown = (base: number): string => lengthText(base, panel.settings);
  const heights = markedHeights(pictured, panel);
  const whole = heights.at(-1)?.along ?? 0;
  const { cutLength } = pictured;
  const cut =
    cutLength === undefined ? '' : ` Cut it ${shown(cutLength)} long: on its middle, lap included.`;
  return [
    `Wall of ${pictured.name} laid flat at its outside: ${shown(whole)} round, from ${startWords(pictured, panel)} again.${cut}`,
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
    ...sideMarks(pictured, standingHeights(pictured, panel), side),
  ];
}

/** Which sides are where; a side at the seam is told with it. */
function sideMarks(
  { seam, seamTurn, ring }: PicturedRing,
  stations: readonly StripStation[],
  side: (along: number, text: string, anchor: 'start' | 'middle') => Mark,
): readonly Mark[] {
  const whole = stations.at(-1)?.along ?? 0;
  if (seamTurn === undefined)
    return [
      side(0, seam ? 'seam, high side' : 'high side', 'start'),
      side(whole / 2, 'low side', 'middle'),
    ];
  const byHeight = stations.toSorted((one, two) => two.height - one.height);
  const ends = [
    ['high side', byHeight[0]],
    ['low side', byHeight.at(-1)],
  ] as const;
  const sides = ring.tilt === 0 ? [] : ends.map(([text, at]) => ({ text, along: at?.along ?? 0 }));
  const isAtSeam = ({ along }: { along: number }): boolean =>
    Math.min(along, whole - along) < whole / marked;
  const first = ['seam', ...sides.filter(isAtSeam).map(({ text }) => text)].join(', ');
  return [
    side(0, first, 'start'),
    ...sides.filter((one) => !isAtSeam(one)).map(({ along, text }) => side(along, text, 'middle')),
  ];
}

/** The wall of a ring as a flat strip, with its height at twelve equal steps from its seam. */
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
