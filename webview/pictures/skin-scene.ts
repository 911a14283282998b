import type { SkinView } from '../../extension/protocol/panel-view.ts';

/** How the skin is looked at: turned about its upright, tipped back, and how close. */
export interface Look {
  readonly turn: number;
  readonly tip: number;
  readonly zoom: number;
}

export const straightOn: Look = { turn: -0.45, tip: 0.85, zoom: 1 };

/** Something flat to be painted: what lies further back comes first. */
export type Painted =
  | {
      readonly kind: 'face';
      /** x and y of three corners, in pixels. */
      readonly at: readonly number[];
      /** Share of the colour scale, 0 to 1. */
      readonly share: number;
      /** How much light falls on it, 0 to 1. */
      readonly light: number;
      readonly depth: number;
    }
  | { readonly kind: 'edge'; readonly at: readonly number[]; readonly depth: number };

const limits = { tip: Math.PI / 2, nearest: 0.5, farthest: 8 };

/** A look turned, tipped or drawn closer by so much, within what shows something. */
export function changedLook(
  look: Look,
  by: { readonly turn?: number; readonly tip?: number; readonly zoom?: number },
): Look {
  const tip = look.tip + (by.tip ?? 0);
  const zoom = look.zoom * (by.zoom ?? 1);
  return {
    turn: look.turn + (by.turn ?? 0),
    tip: Math.max(-limits.tip, Math.min(limits.tip, tip)),
    zoom: Math.max(limits.nearest, Math.min(limits.farthest, zoom)),
  };
}

interface Turned {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
}

/** Where a skin is, and how far it reaches from there. */
interface Extent {
  readonly middle: readonly [number, number, number];
  /** Half its diagonal in plan, and half its height. */
  readonly across: number;
  readonly high: number;
}

/** Extent of points given as x, y and z in turn. */
function extentOf(points: readonly number[]): Extent {
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  points.forEach((value, index) => {
    const axis = index % 3;
    least[axis] = Math.min(least[axis] ?? Infinity, value);
    most[axis] = Math.max(most[axis] ?? -Infinity, value);
  });
  const middle = [0, 1, 2].map((axis) => ((least[axis] ?? 0) + (most[axis] ?? 0)) / 2);
  const size = [0, 1, 2].map((axis) => (most[axis] ?? 0) - (least[axis] ?? 0));
  return {
    middle: [middle[0] ?? 0, middle[1] ?? 0, middle[2] ?? 0],
    across: Math.max(1e-6, Math.hypot(size[0] ?? 0, size[1] ?? 0) / 2),
    high: (size[2] ?? 0) / 2,
  };
}

/** Pixels a mm at which a skin fits its place however it is turned, drawn closer as wanted. */
function fittingScale(
  { tip, zoom }: Look,
  { across, high }: Extent,
  place: { readonly width: number; readonly height: number },
): number {
  const up = across * Math.abs(Math.cos(tip)) + high * Math.abs(Math.sin(tip));
  return 0.47 * zoom * Math.min(place.width / across, place.height / Math.max(1e-6, up));
}

/** Points as they are seen, in pixels with y down; z is towards who looks. */
function turned(
  points: readonly number[],
  look: Look,
  about: Extent,
  place: { readonly width: number; readonly height: number },
): Turned {
  const count = Math.floor(points.length / 3);
  const seen = {
    x: new Float64Array(count),
    y: new Float64Array(count),
    z: new Float64Array(count),
  };
  const scale = fittingScale(look, about, place);
  const [sinTurn, cosTurn] = [Math.sin(look.turn), Math.cos(look.turn)];
  const [sinTip, cosTip] = [Math.sin(look.tip), Math.cos(look.tip)];
  for (let index = 0; index < count; index += 1) {
    const x = (points[3 * index] ?? 0) - about.middle[0];
    const y = (points[3 * index + 1] ?? 0) - about.middle[1];
    const z = (points[3 * index + 2] ?? 0) - about.middle[2];
    const across = x * cosTurn - y * sinTurn;
    const along = x * sinTurn + y * cosTurn;
    seen.x[index] = place.width / 2 + across * scale;
    seen.y[index] = place.height / 2 - (along * cosTip + z * sinTip) * scale;
    seen.z[index] = (z * cosTip - along * sinTip) * scale;
  }
  return seen;
}

/** Cosine between a face and the light, which comes from above the left shoulder of who looks. */
function lightOn(
  seen: Turned,
  [a, b, c]: readonly [number, number, number],
): { readonly light: number; readonly depth: number } {
  const at = (axis: Float64Array, index: number): number => axis[index] ?? 0;
  const side = (axis: Float64Array, to: number): number => at(axis, to) - at(axis, a);
  const [ux, uy, uz] = [side(seen.x, b), -side(seen.y, b), side(seen.z, b)];
  const [vx, vy, vz] = [side(seen.x, c), -side(seen.y, c), side(seen.z, c)];
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
  const size = Math.hypot(nx, ny, nz);
  const facing = size === 0 ? 1 : Math.abs(-0.35 * nx + 0.45 * ny + 0.82 * nz) / size;
  const depth = (at(seen.z, a) + at(seen.z, b) + at(seen.z, c)) / 3;
  return { light: Math.min(1, facing), depth };
}

/** Everything that is painted of a skin, the furthest first. */
export function skinScene(
  view: SkinView,
  scale: SkinView['scales'][number] | undefined,
  look: Look,
  place: { readonly width: number; readonly height: number },
): readonly Painted[] {
  const about = extentOf(view.points);
  const seen = turned(view.points, look, about, place);
  const painted: Painted[] = [];
  const span = scale === undefined ? 0 : scale.most - scale.least;
  const { triangles } = view;
  for (let index = 0; index + 2 < triangles.length; index += 3) {
    const [a = 0, b = 0, c = 0] = [triangles[index], triangles[index + 1], triangles[index + 2]];
    const corners = [a, b, c];
    const value =
      corners.reduce((sum, corner) => sum + (scale?.values[corner] ?? 0), 0) / corners.length;
    const share = span > 0 ? (value - (scale?.least ?? 0)) / span : 0.5;
    painted.push({
      kind: 'face',
      at: corners.flatMap((corner) => [seen.x[corner] ?? 0, seen.y[corner] ?? 0]),
      share: Math.max(0, Math.min(1, share)),
      ...lightOn(seen, [a, b, c]),
    });
  }
  for (const edge of view.edges) painted.push(...edgePieces(turned(edge, look, about, place)));
  return painted.sort((one, two) => one.depth - two.depth);
}

/** An edge piece by piece, so that what stands before one part of it hides that part alone. */
function edgePieces({ x, y, z }: Turned): readonly Painted[] {
  return Array.from({ length: Math.max(0, x.length - 1) }, (_, index) => ({
    kind: 'edge' as const,
    at: [x[index] ?? 0, y[index] ?? 0, x[index + 1] ?? 0, y[index + 1] ?? 0],
    // A little nearer than the faces that it borders.
    depth: ((z[index] ?? 0) + (z[index + 1] ?? 0)) / 2 + 2,
  }));
}
