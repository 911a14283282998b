import { boxAround, signedArea } from '../geometry/outline.ts';
import { shapeLength, shapePerimeter } from '../geometry/shape.ts';
import { ringShadowArea } from '../trade/rings.ts';
import { catenoid, type Catenoid } from './catenoid.ts';
import type { Panel, PlacedRing } from './panel.ts';
import { lipAreas, type SkinFigures } from './skin.ts';

/** What one ring does to the skin, as if it stood alone in the middle of a round panel of the same area. */
interface RingAlone {
  readonly ring: PlacedRing;
  /** Radius of the round panel and of a round lip that hides as much, in mm. */
  readonly edge: number;
  readonly lip: number;
  readonly height: number;
  readonly surface: Catenoid;
  /** Area that the lean adds. */
  readonly leaning: number;
}

function alone(panel: Panel, ring: PlacedRing, base: number): RingAlone {
  const edge = Math.sqrt(base / Math.PI);
  const lip = Math.min(Math.sqrt(ringShadowArea(ring) / Math.PI), 0.98 * edge);
  const height = Math.max(0, ring.depth - panel.thickness);
  const surface = catenoid(edge, lip, height);
  const ratio = (edge * edge + lip * lip) / (edge * edge - lip * lip);
  const leaning = (Math.PI / 2) * (lip * Math.sin(ring.tilt)) ** 2 * ratio;
  return { ring, edge, lip, height, surface, leaning };
}

/** Whether a ring by itself would stand so high that cloth lies against its wall. */
export function wouldHug(panel: Panel, ring: PlacedRing): boolean {
  return alone(panel, ring, signedArea(panel.outline.points)).surface.onWall > 0;
}

/** How much longer a straight pull over a ring is than its plan, from edge to edge; in mm. */
function pulledOver(gap: number, height: number): number {
  return 2 * (Math.hypot(gap, height) - gap);
}

/** Share that a closed form may be off by: with rings near an edge, and else (90 door panels compared). */
const errors = { near: 0.12, else: 0.02 };

/**
 * Figures of a skin by formula, at once: each ring as a catenoid of its own on a round panel of the same
 * area, the effects added. It needs no places of the rings.
 *
 * @source sum of catenoids; compared with the mesh answer: doors within 1.4 %, a kick panel 3.6 % and
 *   one whose ring stands 3/4 in from its edge 11 % high
 */
export function closedFigures(panel: Panel): SkinFigures {
  const base = signedArea(panel.outline.points);
  const rings = panel.rings.map((ring) => alone(panel, ring, base));
  const hidden = rings.reduce((sum, { ring }) => sum + ringShadowArea(ring), 0);
  const more = rings.reduce((sum, { surface, leaning, edge, lip }) => {
    return sum + surface.area - Math.PI * (edge * edge - lip * lip) + leaning;
  }, 0);
  const skin = base - hidden + more;
  const { left, right, bottom, top } = boxAround(panel.outline.points);
  const [length, width] = [right - left, top - bottom];
  const over = (extent: number): number =>
    rings.reduce((most, { lip, height }) => {
      return Math.max(most, pulledOver(Math.max(extent / 2 - lip, lip / 4), height));
    }, 0);
  const near = rings.some(({ edge, lip }) => edge - lip < lip / 2);
  return {
    plan: base - hidden,
    skin,
    skinError: skin * (near ? errors.near : errors.else),
    ...lipAreas(panel),
    volume: rings.reduce((sum, { surface }) => sum + surface.volume, 0),
    slope: rings.reduce((most, one) => Math.max(most, steepest(one)), 0),
    stretch: rings.reduce((most, one) => Math.max(most, stretchOf(one)), 1),
    blankLength: length + over(length),
    blankWidth: width + over(width),
    clearance: clearanceOf(panel),
    hugs: rings.flatMap(({ ring, surface }) =>
      surface.onWall > 0 ? [{ ring: ring.id, length: shapePerimeter(ring.shape) }] : [],
    ),
    bears: [],
    limit: '',
  };
}

function steepest({ ring, edge, lip, surface }: RingAlone): number {
  const lean = Math.tan(ring.tilt) * ((edge * edge + lip * lip) / (edge * edge - lip * lip));
  return Math.atan(surface.slope + lean);
}

/** A pull shared by both directions stretches each by the root of it. */
function stretchOf(one: RingAlone): number {
  const straight = Math.hypot(one.edge - one.lip, one.height) / (one.edge - one.lip);
  return Math.sqrt(Math.max(straight, Math.min(1 / Math.cos(steepest(one)), 4)));
}

/** Room under the limits over the highest lip anywhere: no nearer is known without a mesh. */
function clearanceOf({ rings, limits, build }: Panel): number {
  const highest = rings.reduce((most, { depth, shape, tilt }) => {
    return Math.max(most, depth + (shapeLength(shape) / 2) * Math.sin(tilt));
  }, 0);
  return limits.reduce((least, { height }) => Math.min(least, height - highest - build), Infinity);
}
