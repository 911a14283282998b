import { EndType, inflatePaths, JoinType } from 'clipper2-ts';
import { signedArea, type Outline, type Point } from './outline.ts';
import { soundOutline } from './sound-outline.ts';
import type { GrownCorners } from './shape.ts';

/** Coordinates are whole numbers of this many to the mm. */
const perMm = 1e6 / 25.4;

/** Round corners stray from their circle at most this far, in mm. */
const arcMm = 1e-4 * 25.4;

/** A square corner reaches at most so many distances out; a sharper one is cut off. */
const mostReach = 4;

/** What runs at a distance from an outline: several loops where it falls apart, holes where it closes up. */
export interface Offset {
  readonly outlines: readonly Outline[];
  readonly holes: readonly Outline[];
}

/**
 * The outlines at a distance outside an outline (inside it where the distance is negative), in mm. It
 * may fall into several or none, and close round a hole.
 *
 * @source Clipper2 (Angus Johnson), at the scale and arc tolerance at which Steiner's formula for
 *   parallel curves holds to some millionths
 */
export function outlineOffset(
  outline: Outline,
  distance: number,
  corners: GrownCorners = 'round',
): Offset {
  const path = outline.points.map(({ x, y }) => ({
    x: Math.round(x * perMm),
    y: Math.round(y * perMm),
  }));
  const join = corners === 'round' ? JoinType.Round : JoinType.Miter;
  const grown = inflatePaths(
    [path],
    distance * perMm,
    join,
    EndType.Polygon,
    mostReach,
    arcMm * perMm,
  );
  const loops = grown.map((points) => points.map(({ x, y }) => ({ x: x / perMm, y: y / perMm })));
  return {
    outlines: loops.filter((loop) => signedArea(loop) > 0).flatMap(soundOnly),
    holes: loops.filter((loop) => signedArea(loop) < 0).flatMap(soundOnly),
  };
}

function soundOnly(points: readonly Point[]): readonly Outline[] {
  const sound = soundOutline(points);
  return 'kind' in sound ? [] : [sound];
}
