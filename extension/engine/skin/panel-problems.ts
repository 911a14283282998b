import { inside, type Point } from '../geometry/outline.ts';
import { shapeLength } from '../geometry/shape.ts';
import { crossingOf } from '../geometry/sound-outline.ts';
import { nearestSquared, piecesOf } from './nearest.ts';
import type { Panel, PlacedRing } from './panel.ts';
import { footLoop, lipLoop } from './ring-plan.ts';

/** Why no skin can be stretched over a panel as it is described. */
export type PanelFaultCode =
  | 'skin-outline-crosses'
  | 'skin-lip-outside'
  | 'skin-lips-overlap'
  | 'skin-gap-small'
  | 'skin-low-side'
  | 'skin-tilt-steep'
  | 'skin-overhang';

/** A fault with the ring it is about and a length in mm that measures it. */
export interface PanelFault {
  readonly code: PanelFaultCode;
  /** Id of the ring; the panel's own where it is the outline. */
  readonly row: string;
  /** Id of the other ring, where two are in each other's way. */
  readonly other?: string;
  readonly value: number;
}

/** Least room in plan between two edges that cloth is stretched between, in mm. */
export const leastGap = 0.5;
/** The steepest lean that a ring is built with, in radians. */
export const steepestTilt = Math.PI / 3;

/** Loops are compared as drawn within this, in mm. */
const tolerance = 0.2;

/** Least distance from any of these points to a loop, in mm. */
function gapBetween(points: readonly Point[], loop: readonly Point[]): number {
  const pieces = piecesOf([loop]);
  const nearest = points.reduce(
    (least, { x, y }) => Math.min(least, nearestSquared(x, y, pieces)),
    Infinity,
  );
  return Math.sqrt(nearest);
}

/** Faults of one ring by itself on a base. */
export function faultsOfRing(
  panel: Pick<Panel, 'outline' | 'thickness'>,
  ring: PlacedRing,
): readonly PanelFault[] {
  const row = ring.id;
  if (ring.tilt > steepestTilt) return [{ code: 'skin-tilt-steep', row, value: ring.tilt }];
  const { points } = panel.outline;
  const lip = lipLoop(ring, tolerance);
  const half = shapeLength(ring.shape);
  const low = Math.min(...lip.heights) - panel.thickness;
  if (low < -1e-6 * half) return [{ code: 'skin-low-side', row, value: -low }];
  const out = lip.points.filter((point) => !inside(point, points));
  if (out.length > 0) {
    return [{ code: 'skin-lip-outside', row, value: Math.max(...outBy(out, points)) }];
  }
  // An upright wall stands under its lip.
  const foot =
    ring.build === 'square_wall' ? footLoop(ring, panel.thickness, tolerance).points : [];
  const over = foot.filter((point) => !inside(point, points));
  if (over.length > 0) {
    return [{ code: 'skin-overhang', row, value: Math.max(...outBy(over, points)) }];
  }
  const gap = gapBetween(lip.points, points);
  return gap < leastGap ? [{ code: 'skin-gap-small', row, value: gap }] : [];
}

function outBy(points: readonly Point[], loop: readonly Point[]): readonly number[] {
  return points.map((point) => gapBetween([point], loop));
}

function faultOfPair(one: PlacedRing, other: PlacedRing): readonly PanelFault[] {
  const apart = Math.hypot(one.centre.x - other.centre.x, one.centre.y - other.centre.y);
  const reach = ringReach(one) + ringReach(other);
  if (apart > reach + leastGap) return [];
  const [a, b] = [lipLoop(one, tolerance), lipLoop(other, tolerance)];
  const within =
    a.points.some((point) => inside(point, b.points)) ||
    b.points.some((point) => inside(point, a.points));
  const between = { row: other.id, other: one.id };
  if (within) return [{ code: 'skin-lips-overlap', ...between, value: reach - apart }];
  const gap = Math.min(gapBetween(a.points, b.points), gapBetween(b.points, a.points));
  return gap < leastGap ? [{ code: 'skin-gap-small', ...between, value: gap }] : [];
}

/** How far a ring's lip reaches from its centre in plan, in mm. */
function ringReach(ring: PlacedRing): number {
  const { x, y } = ring.centre;
  return Math.max(
    ...lipLoop(ring, tolerance).points.map((point) => Math.hypot(point.x - x, point.y - y)),
  );
}

/** Faults of rings that are there wherever they stand: too steep, or under the base on the low side. */
export function buildFaults(panel: Panel): readonly PanelFault[] {
  return panel.rings
    .flatMap((ring) => faultsOfRing(panel, ring))
    .filter(({ code }) => code === 'skin-low-side' || code === 'skin-tilt-steep');
}

/**
 * Everything that keeps a skin from being stretched over a panel; empty where it can be. Each fault
 * would either break the mesh or, worse, give a plausible area of an impossible panel.
 */
export function panelFaults(panel: Panel): readonly PanelFault[] {
  if (panel.outline.points.length < 3 || crossingOf(panel.outline.points) !== undefined) {
    return [{ code: 'skin-outline-crosses', row: panel.id, value: 0 }];
  }
  const { rings } = panel;
  const alone = rings.flatMap((ring) => faultsOfRing(panel, ring));
  if (alone.length > 0) return alone;
  return rings.flatMap((one, at) =>
    rings.slice(at + 1).flatMap((other) => faultOfPair(one, other)),
  );
}
