import { inside, signedArea } from '../geometry/outline.ts';
import { shapeArea } from '../geometry/shape.ts';
import { wouldHug } from './closed-form.ts';
import { slopeOf, surfaceArea } from './elements.ts';
import { halfLengthAt, wallHeight } from './floor.ts';
import { blankSize, flattened, stretchRange, type Flattened } from './flatten.ts';
import { nodeAt, twiceArea } from './mesh.ts';
import { real, whole } from './numbers.ts';
import type { Panel, PlacedRing } from './panel.ts';
import { restOver, type SkinMesh } from './rest.ts';
import { lipAreas, rounded, type SkinFigures } from './skin.ts';

/** How finely a skin is worked out. */
export interface SkinOptions {
  /** About how many triangles the plan is divided into. */
  readonly triangles: number;
  /** Whether the blank is worked out too. */
  readonly blank?: boolean;
}

/** From this slope on the cloth lies against the wall, in radians: no mesh tells it nearer. */
const wallSlope = (80 * Math.PI) / 180;
/** Where the ring by itself would have it lie there, a mesh of this size already shows it at this slope. */
const likelySlope = (70 * Math.PI) / 180;

function planOf(ring: PlacedRing): number {
  const along = ring.build === 'round_tube' ? 1 : Math.cos(ring.tilt);
  return shapeArea(ring.shape) * along;
}

/** Area of the skin, put right for what the mesh's straight edges leave out of the plan. */
function skinArea(panel: Panel, { elements, heights }: SkinMesh): number {
  const exact = planArea(panel);
  const meshed = elements.areas.reduce((sum, area) => sum + area, 0);
  return surfaceArea(elements, heights) + exact - meshed;
}

function planArea(panel: Panel): number {
  const hidden = panel.rings.reduce((sum, ring) => sum + planOf(ring), 0);
  return signedArea(panel.outline.points) - hidden;
}

function volumeUnder({ mesh, heights }: SkinMesh): number {
  const { points, triangles } = mesh;
  let sum = 0;
  for (let at = 0; at < triangles.length; at += 3) {
    const [a, b, c] = [whole(triangles, at), whole(triangles, at + 1), whole(triangles, at + 2)];
    const twice = twiceArea(points, a, b, c);
    sum += (twice * (real(heights, a) + real(heights, b) + real(heights, c))) / 6;
  }
  return sum;
}

/** Slope of each triangle of the skin, in radians. */
function slopesOf({ elements, heights }: SkinMesh): Float64Array {
  return elements.areas.map((_, triangle) =>
    Math.atan(Math.hypot(...slopeOf(elements, triangle, heights))),
  );
}

/** Length of each ring's lip along which the cloth lies against its wall, in mm. */
function hugsOf(panel: Panel, rest: SkinMesh, slopes: Float64Array): SkinFigures['hugs'] {
  const { mesh, elements } = rest;
  const ends: number[] = [];
  let end = 0;
  for (const count of mesh.loops) ends.push((end += count));
  const lengths = panel.rings.map(() => 0);
  const least = panel.rings.map((ring) => (wouldHug(panel, ring) ? likelySlope : wallSlope));
  slopes.forEach((slope, triangle) => {
    if (slope < likelySlope) return;
    const nodes = [0, 1, 2].map((corner) => whole(elements.corners, 3 * triangle + corner));
    nodes.forEach((from, corner) => {
      const to = nodes[(corner + 1) % 3] ?? from;
      const ring = ends.findIndex((last) => from < last) - 1;
      if (slope < (least[ring] ?? wallSlope)) return;
      const first = ends[ring] ?? 0;
      if (ring < 0 || to < first || to >= (ends[ring + 1] ?? 0)) return;
      lengths[ring] = (lengths[ring] ?? 0) + edgeLength(mesh.points, from, to);
    });
  });
  return panel.rings.flatMap(({ id }, at) => {
    const length = lengths[at] ?? 0;
    return length > 0 ? [{ ring: id, length: rounded(length) }] : [];
  });
}

function edgeLength(points: Float64Array, a: number, b: number): number {
  return Math.hypot(
    real(points, 2 * a) - real(points, 2 * b),
    real(points, 2 * a + 1) - real(points, 2 * b + 1),
  );
}

/** Least room between the finished surface and the limits over it, and which limit that is. */
function roomUnder(panel: Panel, { mesh, elements, heights }: SkinMesh, slopes: Float64Array) {
  const steep = new Float64Array(heights.length).fill(1);
  slopes.forEach((slope, triangle) => {
    const thicker = 1 / Math.cos(Math.min(slope, wallSlope));
    for (const corner of [0, 1, 2]) {
      const node = whole(elements.corners, 3 * triangle + corner);
      steep[node] = Math.max(real(steep, node), thicker);
    }
  });
  let nearest = { room: Infinity, limit: '' };
  for (const limit of panel.limits) {
    heights.forEach((height, node) => {
      const point = nodeAt(mesh, node);
      const top = panel.thickness + height + panel.build * real(steep, node);
      const room = limit.height - top;
      if (room < nearest.room && inside(point, limit.outline.points)) {
        nearest = { room, limit: limit.id };
      }
    });
  }
  return nearest;
}

function bearsOf(panel: Panel, { resting, mesh }: SkinMesh): readonly string[] {
  const points = [...resting].map((node) => nodeAt(mesh, node));
  const blocks = panel.blocks.filter(({ outline }) =>
    points.some((point) => inside(point, outline.points)),
  );
  const free = points.filter(
    (point) => !panel.blocks.some(({ outline }) => inside(point, outline.points)),
  );
  const rings = panel.rings.filter((ring) => {
    const half = halfLengthAt(ring);
    const leans = ring.build === 'square_wall' && ring.tilt > 0;
    return leans && free.some((point) => wallHeight(ring, point, half) > panel.thickness);
  });
  return [...blocks, ...rings].map(({ id }) => id);
}

/** A skin with its figures and what pictures of it need. */
export interface SettledSkin {
  readonly figures: SkinFigures;
  readonly rest: SkinMesh;
  readonly flat: Flattened | undefined;
}

/**
 * Works a skin out: the surface at rest, its area with an honest bound (a third of what a mesh twice as
 * coarse differs by), volume, slopes, contacts, blank. Figures are rounded to six digits, so that every
 * machine gives the same. The panel has no faults (`panelFaults`).
 */
export function settleSkin(panel: Panel, options: SkinOptions): SettledSkin {
  const rest = restOver(panel, options.triangles);
  const coarse = restOver(panel, options.triangles / 4);
  const skin = skinArea(panel, rest);
  const slopes = slopesOf(rest);
  const flat = options.blank === false ? undefined : flattened(rest.mesh, rest.heights);
  const blank = flat === undefined ? { length: 0, width: 0 } : blankSize(flat);
  const { room, limit } = roomUnder(panel, rest, slopes);
  const { faces, lids } = lipAreas(panel);
  return {
    rest,
    flat,
    figures: {
      plan: rounded(planArea(panel)),
      skin: rounded(skin),
      skinError: rounded(Math.abs(skinArea(panel, coarse) - skin) / 3),
      faces: rounded(faces),
      lids: rounded(lids),
      volume: rounded(volumeUnder(rest)),
      slope: rounded(slopes.reduce((most, slope) => Math.max(most, slope), 0)),
      stretch: flat === undefined ? 1 : rounded(stretchRange(flat)),
      blankLength: rounded(blank.length),
      blankWidth: rounded(blank.width),
      clearance: rounded(room),
      hugs: hugsOf(panel, rest, slopes),
      bears: bearsOf(panel, rest),
      limit,
    },
  };
}
