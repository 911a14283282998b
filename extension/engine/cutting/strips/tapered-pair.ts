import { onDemand } from '../../units/on-demand.ts';

/** A strip that tapers round and meets itself; sizes in mm. */
export interface TaperedStrip {
  /**
   * Heights at equal steps once round, an even number of them, from the high side to it again; from the
   * seam where that stands elsewhere.
   */
  readonly heights: readonly number[] | Float64Array;
  /** Every such strip has its seam where its heights begin. */
  readonly fixed?: boolean;
  /** Once round, and what lies on the first end again. */
  readonly round: number;
  readonly lap: number;
}

type Corner = readonly [number, number];
type Loop = readonly Corner[];

/** Two tapered strips out of one rectangle, head to tail; sizes in mm. */
export interface TaperedPair {
  readonly length: number;
  readonly width: number;
  /** Width of two such strips cut beside each other, each as a rectangle, with the cut between. */
  readonly apart: number;
  /** The strips are alike, one turned end for end: their seam stands where the ring's row sets it. */
  readonly turned: boolean;
  /** Stands on the rectangle's lower side; its ends, the seam, are at the ring's high side. */
  readonly highSeam: Loop;
  /** Stands on the upper side, upside down; its seam is at the ring's low side. */
  readonly lowSeam: Loop;
}

/** Sawn to: widths are rounded up to it, mm. */
const step = 0.01;

/** An edge from end to end, in rows of numbers: each edit of a ring lays two against each other. */
interface Edge {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
}

const highOnDemand = onDemand('highSeam');
const lowOnDemand = onDemand('lowSeam');

/** Height `share` of the way round; the edge is straight between its steps. */
function heightAt({ heights }: TaperedStrip, share: number): number {
  const steps = heights.length - 1;
  const at = (share - Math.floor(share)) * steps;
  const index = Math.min(steps - 1, Math.floor(at + 1e-9));
  const from = heights[index] ?? 0;
  const to = heights[index + 1] ?? from;
  return from + (to - from) * Math.max(0, at - index);
}

/** Upper edge from end to end, with the seam `phase` of the way round from the high side. */
function edgeOf(strip: TaperedStrip, phase: number): Edge {
  const { heights, round, lap } = strip;
  const steps = heights.length - 1;
  const length = round + lap;
  const inside = Math.max(1, Math.ceil((length / round) * steps - 1e-6));
  const xs = new Float64Array(inside + 1);
  const ys = new Float64Array(inside + 1);
  for (let index = 0; index <= inside; index++) {
    const x = index === inside ? length : (index * round) / steps;
    xs[index] = x;
    ys[index] = heightAt(strip, x / round + phase);
  }
  return { xs, ys };
}

function endForEnd({ xs, ys }: Edge, length: number): Edge {
  return { xs: xs.map((x) => length - x).reverse(), ys: ys.toReversed() };
}

function loopOf({ xs, ys }: Edge): Loop {
  return Array.from(xs, (x, index): Corner => [x, ys[index] ?? 0]);
}

/** First place of `xs` that is not left of `x`. */
function firstFrom(xs: Float64Array, x: number): number {
  let low = 0;
  let high = xs.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((xs[middle] ?? Infinity) < x) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * How far the piece of an edge before `index` and a place beside it must be moved apart upright so that
 * they keep `kerf`: the circle about the place, put on the straight piece where they are nearest.
 */
function apartAt(x: number, { xs, ys }: Edge, index: number, kerf: number): number {
  const from = xs[index - 1] ?? 0;
  const to = xs[index] ?? from;
  const low = ys[index - 1] ?? 0;
  const high = ys[index] ?? low;
  const left = Math.max(from, x - kerf);
  const right = Math.min(to, x + kerf);
  if (left > right || to === from) return -Infinity;
  const slope = (high - low) / (to - from);
  const beside = (kerf * slope) / Math.sqrt(1 + slope * slope);
  const at = Math.min(right, Math.max(left, x + beside));
  const over = Math.sqrt(Math.max(0, kerf * kerf - (at - x) ** 2));
  return over + low + slope * (at - from);
}

/** The most that any place of one edge asks of the pieces of the other. */
function mostApart(edge: Edge, other: Edge, kerf: number): number {
  let most = 0;
  for (let place = 0; place < edge.xs.length; place++) {
    const x = edge.xs[place] ?? 0;
    const y = edge.ys[place] ?? 0;
    let index = Math.max(1, firstFrom(other.xs, x - kerf));
    for (; index < other.xs.length; index++) {
      if ((other.xs[index - 1] ?? Infinity) > x + kerf) break;
      most = Math.max(most, y + apartAt(x, other, index, kerf));
    }
  }
  return most;
}

function extremesOf(heights: TaperedStrip['heights']): { least: number; highest: number } {
  let [least, highest] = [Infinity, -Infinity];
  for (let place = 0; place < heights.length; place++) {
    least = Math.min(least, heights[place] ?? Infinity);
    highest = Math.max(highest, heights[place] ?? -Infinity);
  }
  return { least, highest };
}

/**
 * Two strips of one ring's kind laid head to tail, one with its seam at the high side and the other at
 * the low side, so that the humps of one lie over the hollows of the other. Between their edges there
 * is a cut's width, measured square to the edge; of a tube cut on the slope that makes low side + high
 * side + kerf ÷ cos(tilt). Both laps are at the same end. Where the seam is fixed, the second strip is the
 * first turned end for end, its lap with it.
 *
 * @returns undefined where the pair would be no narrower than two strips cut as rectangles, or where a
 *   height is below nothing
 * @source geometry; the least distance of two edges of straight pieces is at a corner of one of them
 */
export function taperedPair(strip: TaperedStrip, kerf: number): TaperedPair | undefined {
  const { heights, round, lap } = strip;
  const { least, highest } = extremesOf(heights);
  if (heights.length < 3 || !(round > 0) || lap < 0 || least < 0) return undefined;
  const turned = strip.fixed === true;
  const high = edgeOf(strip, 0);
  const low = turned ? endForEnd(high, round + lap) : edgeOf(strip, 0.5);
  const most = Math.max(mostApart(high, low, kerf), mostApart(low, high, kerf), highest);
  const width = Math.ceil(most / step - 1e-6) * step;
  const apart = 2 * highest + kerf;
  if (width > apart - step) return undefined;
  const length = round + lap;
  const below = { xs: low.xs, ys: low.ys.map((y) => width - y) };
  const above = (): Loop => [[0, 0], [length, 0], ...loopOf(high).toReversed()];
  const pair = highOnDemand({ length, width, apart, turned }, above);
  return lowOnDemand(pair, (): Loop => [[length, width], [0, width], ...loopOf(below)]);
}
