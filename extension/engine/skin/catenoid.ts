/** What hangs between a round lip and a round edge around it. Sizes in mm. */
export interface Catenoid {
  /** Area of the surface, the wall it lies against included. */
  readonly area: number;
  /** Volume under it and under the lip's lid, down to the edge. */
  readonly volume: number;
  /** Radius that the surface would have at its narrowest. */
  readonly waist: number;
  /** Slope at the lip, as rise over run; infinite where it lies against the wall. */
  readonly slope: number;
  /** How much of the wall's height the surface lies against; 0 where it leaves the lip freely. */
  readonly onWall: number;
}

/**
 * The height at which a surface stretched from an edge of radius `edge` to a lip of radius `lip`
 * begins to lie against the wall under the lip, in mm: r·acosh(R/r).
 *
 * @source catenoid with its neck at the lip
 */
export function wallLimit(edge: number, lip: number): number {
  return lip * Math.acosh(edge / lip);
}

/** Halvings of an interval after which a double has no more digits. */
const halvings = 200;

function waistFor(edge: number, lip: number, height: number): number {
  let [low, high] = [0, lip];
  for (let step = 0; step < halvings && high - low > 0; step++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    const reached = middle * (Math.acosh(edge / middle) - Math.acosh(lip / middle));
    if (reached < height) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Area of the surface of revolution of c·cosh(z/c) between two radii. */
function bandArea(waist: number, lip: number, edge: number): number {
  const part = (radius: number): number => {
    const t = Math.acosh(Math.max(1, radius / waist));
    return t + Math.sinh(t) * Math.cosh(t);
  };
  return Math.PI * waist * waist * (part(edge) - part(lip));
}

/**
 * The least surface between a level round edge and a level round lip over its middle, `height` higher.
 *
 * @param edge radius of the edge, larger than `lip`; both in mm
 * @source Euler's catenoid; area by integrating its meridian, volume from V = c·A/2 for the graph with
 *   its lid (both checked by quadrature)
 * @example an edge of 8 in radius and a lip of 3 3/4 in, 2 in higher: 172.5075 sq in, 202.46 cu in
 */
export function catenoid(edge: number, lip: number, height: number): Catenoid {
  if (height <= 0) {
    const area = Math.PI * (edge * edge - lip * lip);
    return { area, volume: 0, waist: 0, slope: 0, onWall: 0 };
  }
  const limit = wallLimit(edge, lip);
  const onWall = Math.max(0, height - limit);
  const upright = height >= limit;
  const waist = upright ? lip : waistFor(edge, lip, height);
  const free = bandArea(waist, lip, edge);
  return {
    area: free + 2 * Math.PI * lip * onWall,
    volume: (waist * free) / 2 + Math.PI * lip * lip * onWall,
    waist,
    slope: upright ? Infinity : waist / Math.sqrt(lip * lip - waist * waist),
    onWall,
  };
}
