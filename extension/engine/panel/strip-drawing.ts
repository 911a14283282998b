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
    `Wall of ${pictured.name} laid flat at its outside: ${shown(whole)} round, from the seam on the high side to the seam again.${cut}`,
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

/** The wall of a ring as a flat strip, with its height at twelve equal steps from the seam. */
export function stripDrawing(pictured: PicturedRing, panel: PicturedPanel): Drawing {
  const stations = standingHeights(pictured, panel);
  const heights = markedHeights(pictured, panel);
  const whole = stations.at(-1)?.along ?? 0;
  const lettering = letteringOf(whole);
  const row = drawnRow(pictured.row);
  const shown = (base: number): string => lengthText(base, panel.settings);
  const top = stations.map(({ along, height }) => ({ x: along, y: height }));
  const [first, middle] = [heights[0], heights[marked / 2]];
  const highest = Math.max(...heights.map(({ height }) => height));
  const marks: readonly Mark[] = [
    loop('outline', [{ x: 0, y: 0 }, { x: whole, y: 0 }, ...top.toReversed()], {
      row,
      filled: true,
    }),
    ...heights.map(({ along, height }, index) =>
      line(
        index === 0 || index === marked ? 'seam' : 'fold',
        [
          { x: along, y: 0 },
          { x: along, y: height },
        ],
        { row },
      ),
    ),
    ...tellingFirst(heights).map(({ along, height }) =>
      words('dimension', { x: along, y: height + lettering.height * 0.6 }, shown(height), {
        height: lettering.height,
      }),
    ),
    words('note', { x: 0, y: highest + lettering.height * 2.6 }, 'seam, high side', {
      height: lettering.height,
      anchor: 'start',
    }),
    ...(first === undefined || middle === undefined
      ? []
      : [
          words('note', { x: middle.along, y: highest + lettering.height * 2.6 }, 'low side', {
            height: lettering.height,
          }),
        ]),
    ...dimension(
      {
        from: { x: 0, y: 0 },
        to: { x: whole, y: 0 },
        at: -lettering.step,
        along: 'x',
        text: shown(whole),
      },
      lettering,
    ),
  ];
  return {
    id: `strip_${pictured.row.id}`,
    title: `${pictured.name}: strip`,
    words: stripWords(pictured, panel),
    box: boxAround(reached(marks)),
    marks,
  };
}
