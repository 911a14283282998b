import { inside, type Point } from '../geometry/outline.ts';
import { nodeAt, type PlanMesh } from './mesh.ts';
import type { Panel, PlacedRing } from './panel.ts';
import { alongLean } from './ring-plan.ts';

/** Height of the leaning wall of a ring over a point outside its lip, above the base plane. */
export function wallHeight(
  ring: PlacedRing,
  point: Point,
  half: (across: number) => number,
): number {
  const { along, across } = alongLean(ring, point);
  const reach = half(across);
  if (reach <= 0) return -Infinity;
  const lip = -reach * Math.cos(ring.tilt);
  if (along >= lip) return -Infinity;
  const down = (lip - along) / Math.sin(ring.tilt);
  return ring.depth + reach * Math.sin(ring.tilt) - down * Math.cos(ring.tilt);
}

/** Half the length of a ring's shape at a distance across its lean, in mm; 0 beyond it. */
export function halfLengthAt({ shape }: PlacedRing): (across: number) => number {
  if (shape.kind === 'circle' || shape.kind === 'oval') {
    const [long, wide] =
      shape.kind === 'circle'
        ? [shape.diameter / 2, shape.diameter / 2]
        : [shape.length / 2, shape.width / 2];
    return (across) => (Math.abs(across) >= wide ? 0 : long * Math.sqrt(1 - (across / wide) ** 2));
  }
  const [long, wide] = [shape.length / 2, shape.width / 2];
  const radius = shape.kind === 'roundrect' ? shape.radius : 0;
  return (across) => {
    const beyond = Math.abs(across) - (wide - radius);
    if (Math.abs(across) >= wide) return 0;
    return beyond <= 0 ? long : long - radius + Math.sqrt(radius * radius - beyond * beyond);
  };
}

/** Heights above the base's front that the skin cannot fall below; undefined where nothing leans or stands. */
export function floorUnder(panel: Panel, mesh: PlanMesh): Float64Array | undefined {
  const leaning = panel.rings.filter(({ build, tilt }) => build === 'square_wall' && tilt > 0);
  if (leaning.length === 0 && panel.blocks.length === 0) return undefined;
  const halves = leaning.map(halfLengthAt);
  return new Float64Array(mesh.points.length / 2).map((_, node) => {
    const point = nodeAt(mesh, node);
    const walls = leaning.map((ring, at) => wallHeight(ring, point, halves[at] ?? (() => 0)));
    const blocks = panel.blocks.map(({ outline, height }) =>
      inside(point, outline.points) ? height : -Infinity,
    );
    return Math.max(...walls, ...blocks) - panel.thickness;
  });
}
