/** A strip that tapers round and meets itself; sizes in mm. */
export interface TaperedStrip {
  /**
   * Heights at equal steps once round, an even number of them, from the high side to it again; from the
   * seam where that stands elsewhere.
   */
  readonly heights: readonly number[];
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

/** Height `share` of the way round; the edge is straight between its steps. */
function heightAt({ heights }: TaperedStrip, share: number): number {
  const steps = heights.length - 1;
  const at = (share - Math.floor(share)) * steps;
  const index = Math.min(steps - 1, Math.floor(at + 1e-9));
  const [from = 0, to = from] = heights.slice(index, index + 2);
  return from + (to - from) * Math.max(0, at - index);
}

/** Upper edge from end to end, with the seam `phase` of the way round from the high side. */
function edgeOf(strip: TaperedStrip, phase: number): Loop {
  const { heights, round, lap } = strip;
  const steps = heights.length - 1;
  const length = round + lap;
  const inside = Math.max(1, Math.ceil((length / round) * steps - 1e-6));
  const along = Array.from({ length: inside }, (_, index) => (index * round) / steps);
  return [...along, length].map((x) => [x, heightAt(strip, x / round + phase)]);
}

function endForEnd(edge: Loop, length: number): Loop {
  return edge.map(([x, y]): Corner => [length - x, y]).toReversed();
}

/** First place of `edge` that is not left of `x`. */
function firstFrom(edge: Loop, x: number): number {
  let [low, high] = [0, edge.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((edge[middle]?.[0] ?? Infinity) < x) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** A straight piece of an edge; `beside` is how far from a place its nearest circle point lies. */
interface Piece {
  readonly from: Corner;
  readonly to: Corner;
  readonly slope: number;
  readonly beside: number;
}

function piecesOf(edge: Loop, kerf: number): readonly Piece[] {
  return edge.slice(1).map((to, index) => {
    const from = edge[index] ?? to;
    const slope = to[0] === from[0] ? 0 : (to[1] - from[1]) / (to[0] - from[0]);
    return { from, to, slope, beside: (kerf * slope) / Math.hypot(1, slope) };
  });
}

/**
 * How far a piece of an edge and a place of the other must be moved apart upright so that they keep
 * `kerf`: the circle about the place, put on the straight piece where they are nearest.
 */
function apartAt(place: Corner, { from, to, slope, beside }: Piece, kerf: number): number {
  const x = place[0];
  const left = Math.max(from[0], x - kerf);
  const right = Math.min(to[0], x + kerf);
  if (left > right || to[0] === from[0]) return -Infinity;
  const at = Math.min(right, Math.max(left, x + beside));
  const over = Math.sqrt(Math.max(0, kerf * kerf - (at - x) ** 2));
  return place[1] + over + from[1] + slope * (at - from[0]);
}

/** The most that any place of one edge asks of the pieces of the other. */
function mostApart(edge: Loop, other: Loop, kerf: number): number {
  const pieces = piecesOf(other, kerf);
  let most = 0;
  for (const place of edge) {
    const x = place[0];
    let index = Math.max(1, firstFrom(other, x - kerf));
    for (; index < other.length; index++) {
      const piece = pieces[index - 1];
      if (piece === undefined || piece.from[0] > x + kerf) break;
      most = Math.max(most, apartAt(place, piece, kerf));
    }
  }
  return most;
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
  if (heights.length < 3 || !(round > 0) || lap < 0 || Math.min(...heights) < 0) return undefined;
  const turned = strip.fixed === true;
  const high = edgeOf(strip, 0);
  const low = turned ? endForEnd(high, round + lap) : edgeOf(strip, 0.5);
  const most = Math.max(mostApart(high, low, kerf), mostApart(low, high, kerf), ...heights);
  const width = Math.ceil(most / step - 1e-6) * step;
  const apart = 2 * Math.max(...heights) + kerf;
  if (width > apart - step) return undefined;
  const length = round + lap;
  return {
    length,
    width,
    apart,
    turned,
    highSeam: [[0, 0], [length, 0], ...high.toReversed()],
    lowSeam: [[length, width], [0, width], ...low.map(([x, y]): Corner => [x, width - y])],
  };
}
