import type { Mark } from '../drawing/drawing.ts';
import type { Point } from '../geometry/outline.ts';
import { stripStations, type StripStation } from '../skin/ring-plan.ts';
import { angleText, lengthText, line, words } from './marks.ts';
import { cutLoop, patternOf, type Pattern } from './pattern-marks.ts';
import { seamDirection, type PicturedPanel, type PicturedRing } from './pictured-panel.ts';

/** The edge is drawn through this many places: a straight piece strays some thousandths of a mm. */
const steps = 720;

/** Places at which the bench marks the height. */
const marked = 12;

/** A bent strip ends with a lap; a tube or a stack is marked with paper wrapped round it. */
const bentKind = 'ring';

interface Flat {
  readonly stations: readonly StripStation[];
  /** What lies on the first end again when it is bent, in mm. */
  readonly lap: number;
}

/**
 * The wall laid flat at its middle, where bending neither stretches nor presses it, or for what is not
 * bent at its outside.
 *
 * @source geometry: the middle of a wall of thickness t is π·t shorter round than its outside
 */
function laidFlat(pictured: PicturedRing, { thickness }: PicturedPanel): Flat {
  const { ring, row, onTop, cutLength } = pictured;
  const lower = ring.build === 'square_wall' ? onTop : onTop / Math.cos(ring.tilt);
  const outside = stripStations(ring, thickness, steps, seamDirection(pictured));
  const girth = outside.at(-1)?.along ?? 0;
  const isBent = row.kind === bentKind;
  const neutral = isBent ? girth - Math.PI * ring.wall : girth;
  const share = girth === 0 ? 1 : neutral / girth;
  const stations = outside.map(({ along, height }) => ({
    along: along * share,
    height: height - lower,
  }));
  const lap = isBent && cutLength !== undefined ? Math.max(0, cutLength - neutral) : 0;
  return { stations, lap };
}

/** The upper edge with the lap at its end, which repeats how the edge begins. */
function upperEdge({ stations, lap }: Flat): readonly Point[] {
  const whole = stations.at(-1)?.along ?? 0;
  const edge = stations.map(({ along, height }) => ({ x: along, y: height }));
  if (lap === 0) return edge;
  const again = edge.slice(1).filter(({ x }) => x < lap);
  const [next = edge.at(-1)] = edge.slice(again.length + 1);
  const lapped = [...again, { x: lap, y: next?.y ?? 0 }];
  return [...edge, ...lapped.map(({ x, y }) => ({ x: x + whole, y }))];
}

/** Where the seam stands, and what follows for the other hand and for a second strip. */
function seamSentences(
  { row, ring, seamTurn }: PicturedRing,
  { stations }: Flat,
  { settings }: PicturedPanel,
): readonly string[] {
  const isPaired = row.kind === bentKind && ring.tilt > 0;
  if (seamTurn !== undefined) {
    const lowest = stations.reduce((low, one) => (one.height < low.height ? one : low), {
      along: 0,
      height: Infinity,
    });
    const seam = `The seam stands ${angleText(seamTurn, settings)} from straight up`;
    if (!isPaired) return [`${seam}. The same for both hands.`];
    return [
      `${seam}; the low side lies ${lengthText(lowest.along, settings)} from it. Bent with this face outwards for the right, turned over for the left.`,
      'Two cut head to tail are alike: turn this pattern end for end for the second.',
    ];
  }
  const second =
    'Of two cut head to tail, the second has its seam on the low side: it starts in the middle of this pattern.';
  return [
    'The seam is on the high side; the low side is in the middle. The same for both hands.',
    ...(isPaired ? [second] : []),
  ];
}

/** Pattern of a ring's wall: the strip to cut, or the paper to wrap round a tube. */
export function ringPattern(pictured: PicturedRing, panel: PicturedPanel): Pattern {
  const { row, name } = pictured;
  const flat = laidFlat(pictured, panel);
  const top = upperEdge(flat);
  const end = top.at(-1)?.x ?? 0;
  const whole = flat.stations.at(-1)?.along ?? 0;
  const shown = (mm: number): string => lengthText(mm, panel.settings);
  const places = flat.stations.filter((_, index) => index % (steps / marked) === 0);
  const heights = places.map(({ height }) => height);
  const marks: readonly Mark[] = [
    cutLoop('outline', [{ x: 0, y: 0 }, { x: end, y: 0 }, ...[...top].reverse()], row),
    ...places.map(({ along, height }, index) =>
      line(index === 0 || index === marked ? 'seam' : 'fold', [
        { x: along, y: 0 },
        { x: along, y: height },
      ]),
    ),
    ...places.slice(0, marked).map(({ along, height }) =>
      words('dimension', { x: along + 1.5, y: Math.max(2, height / 2) }, shown(height), {
        height: 2.5,
        anchor: 'start',
      }),
    ),
  ];
  const lap = flat.lap === 0 ? '' : `, and ${shown(flat.lap)} of lap`;
  return patternOf({
    row,
    id: `${row.id}_strip`,
    title: `${name}, ${row.kind === bentKind ? 'strip' : 'paper to wrap round'}`,
    sentences: [
      `${shown(whole)} round${lap}; low side ${shown(Math.min(...heights))}, high side ${shown(Math.max(...heights))}.`,
      ...seamSentences(pictured, flat, panel),
      'Lower edge: on the base. Slope the upper edge as the ring leans.',
    ],
    marks,
  });
}
