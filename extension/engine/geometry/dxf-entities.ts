import { circleArc, ellipseArc, type Curve } from './curve-points.ts';
import type { DrawnLine } from './drawn-file.ts';
import { groupNumber, type Entity } from './dxf-groups.ts';
import { splineSpans } from './dxf-spline.ts';
import type { Point } from './outline.ts';

type Drawn = Omit<DrawnLine, 'names'>;

/** A corner of a polyline, and how far the piece after it bulges. */
interface Vertex extends Point {
  /** Tangent of a quarter of the angle of its arc; to the left when it is positive. */
  readonly bulge: number;
}

/** Seen from behind: such an entity's x runs the other way. */
function side(entity: Entity): 1 | -1 {
  return groupNumber(entity, 230, 1) < 0 ? -1 : 1;
}

/** Neither seen from the front nor from behind: no outline in the plane. */
function isTilted(entity: Entity): boolean {
  return Math.abs(groupNumber(entity, 210, 0)) + Math.abs(groupNumber(entity, 220, 0)) > 1e-9;
}

function pointAt(entity: Entity, x: number, y: number): Point {
  return { x: groupNumber(entity, x, 0), y: groupNumber(entity, y, 0) };
}

/** The entities of the vertices that follow a POLYLINE. */
export function entityVertices(entities: readonly Entity[], index: number): readonly Entity[] {
  if (entities[index]?.type !== 'POLYLINE') return [];
  const after = entities.slice(index + 1);
  const end = after.findIndex(({ type }) => type !== 'VERTEX');
  return end < 0 ? after : after.slice(0, end);
}

/** @source AutoCAD DXF reference: the bulge of a piece is the tangent of a quarter of its angle */
function bulged(from: Vertex, to: Point): Point | Curve {
  const { bulge } = from;
  if (bulge === 0) return to;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  if (dx === 0 && dy === 0) return to;
  const off = (1 - bulge * bulge) / (4 * bulge);
  const centre = { x: (from.x + to.x) / 2 - dy * off, y: (from.y + to.y) / 2 + dx * off };
  const start = Math.atan2(from.y - centre.y, from.x - centre.x);
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  return circleArc(centre, radius, { from: start, to: start + 4 * Math.atan(bulge) });
}

function polyline(vertices: readonly Vertex[], closed: boolean): Drawn | undefined {
  const [first] = vertices;
  if (first === undefined || vertices.length < 2) return undefined;
  const ends = closed ? [...vertices.slice(1), first] : vertices.slice(1);
  const parts = ends.map((to, index) => bulged(vertices[index] ?? first, to));
  return { start: first, parts, closed };
}

/** Vertices of a LWPOLYLINE: each begins with its x. */
function lightVertices({ groups }: Entity, mirror: 1 | -1): readonly Vertex[] {
  const vertices: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of groups) {
    const last = vertices.at(-1);
    if (code === 10) vertices.push({ x: mirror * Number(value), y: 0, bulge: 0 });
    else if (code === 20 && last !== undefined) last.y = Number(value);
    else if (code === 42 && last !== undefined) last.bulge = mirror * Number(value);
  }
  return vertices;
}

function oldVertices(vertices: readonly Entity[], mirror: 1 | -1): readonly Vertex[] {
  // Frames of splines are not on the line itself.
  const onLine = vertices.filter((vertex) => (groupNumber(vertex, 70, 0) & 16) === 0);
  return onLine.map((vertex) => ({
    x: mirror * groupNumber(vertex, 10, 0),
    y: groupNumber(vertex, 20, 0),
    bulge: mirror * groupNumber(vertex, 42, 0),
  }));
}

function isClosed(entity: Entity): boolean {
  return (groupNumber(entity, 70, 0) & 1) !== 0;
}

/** Lines in space, meshes and faces have no outline in the plane. */
function isSpatial(entity: Entity): boolean {
  return (groupNumber(entity, 70, 0) & (8 | 16 | 64)) !== 0;
}

function arcLine(curve: Curve, closed: boolean): Drawn {
  return { start: curve.at(curve.from), parts: [curve], closed };
}

function round(entity: Entity): Drawn {
  const mirror = side(entity);
  const middle = pointAt(entity, 10, 20);
  const centre = { x: mirror * middle.x, y: middle.y };
  const radius = groupNumber(entity, 40, 0);
  if (entity.type === 'CIRCLE') {
    return arcLine(circleArc(centre, radius, { from: 0, to: 2 * Math.PI }), true);
  }
  const radians = (code: number): number => (groupNumber(entity, code, 0) * Math.PI) / 180;
  const from = radians(50);
  const to = from + turnBetween(from, radians(51));
  const arc = circleArc(centre, radius, { from, to });
  const { x } = centre;
  // The mirror image of each point about the upright line through its centre.
  const seen = (point: Point): Point => ({ x: mirror < 0 ? 2 * x - point.x : point.x, y: point.y });
  return arcLine({ ...arc, at: (angle) => seen(arc.at(angle)) }, false);
}

/** How far it is counter-clockwise from one angle to another; once round where they are the same. */
function turnBetween(from: number, to: number): number {
  const round = 2 * Math.PI;
  const turn = (((to - from) % round) + round) % round;
  return turn < 1e-12 ? round : turn;
}

function ellipse(entity: Entity): Drawn {
  const long = pointAt(entity, 11, 21);
  const ratio = groupNumber(entity, 40, 1) * side(entity);
  const short = { x: -long.y * ratio, y: long.x * ratio };
  const from = groupNumber(entity, 41, 0);
  const turn = turnBetween(from, groupNumber(entity, 42, 2 * Math.PI));
  const whole = Math.abs(turn - 2 * Math.PI) < 1e-9;
  const arc = ellipseArc(pointAt(entity, 10, 20), { long, short }, { from, to: from + turn });
  return arcLine(arc, whole);
}

function spline(entity: Entity): Drawn | undefined {
  const spans = splineSpans(entity.groups);
  const [first] = spans;
  return first === undefined
    ? undefined
    : { start: first.at(first.from), parts: spans, closed: false };
}

/** An entity as a line; undefined where it is of a kind that has none here. */
export function drawnEntity(entity: Entity, vertices: readonly Entity[]): Drawn | undefined {
  const { type } = entity;
  if (isTilted(entity)) return undefined;
  switch (type) {
    case 'LINE':
      return { start: pointAt(entity, 10, 20), parts: [pointAt(entity, 11, 21)], closed: false };
    case 'CIRCLE':
    case 'ARC':
      return groupNumber(entity, 40, 0) > 0 ? round(entity) : undefined;
    case 'ELLIPSE':
      return ellipse(entity);
    case 'LWPOLYLINE':
      return polyline(lightVertices(entity, side(entity)), isClosed(entity));
    case 'POLYLINE':
      if (isSpatial(entity)) return undefined;
      return polyline(oldVertices(vertices, side(entity)), isClosed(entity));
    case 'SPLINE':
      return spline(entity);
    default:
      return undefined;
  }
}
