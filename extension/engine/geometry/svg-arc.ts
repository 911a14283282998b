import { ellipseArc, type Curve } from './curve-points.ts';
import type { Point } from './outline.ts';

/** An arc command of a path: radii, slope in degrees, the long way round, clockwise on the page, end. */
export type ArcSegment = readonly ['A', number, number, number, number, number, number, number];

/**
 * The curve of an arc command that begins at a point; its end alone where there is no arc to draw.
 *
 * @source W3C, Scalable Vector Graphics (SVG) 1.1, appendix F.6 (centre from end points; radii that are
 *   too small are made to reach)
 */
export function svgArc(from: Point, segment: ArcSegment): Curve | Point {
  const [, rxGiven, ryGiven, slope, long, sweep, x, y] = segment;
  const to = { x, y };
  let [rx, ry] = [Math.abs(rxGiven), Math.abs(ryGiven)];
  if (rx === 0 || ry === 0 || (from.x === to.x && from.y === to.y)) return to;
  const phi = (slope * Math.PI) / 180;
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
  const [dx, dy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const half = { x: cos * dx + sin * dy, y: cos * dy - sin * dx };
  const reach = Math.hypot(half.x / rx, half.y / ry);
  if (reach > 1) [rx, ry] = [rx * reach, ry * reach];
  const across = (rx * half.y) ** 2 + (ry * half.x) ** 2;
  const square = Math.max(0, ((rx * ry) ** 2 - across) / across);
  const share = Math.sqrt(square) * (long === sweep ? -1 : 1);
  const centre = { x: (share * rx * half.y) / ry, y: (-share * ry * half.x) / rx };
  const angleTo = (point: Point): number =>
    Math.atan2((point.y - centre.y) / ry, (point.x - centre.x) / rx);
  const start = angleTo(half);
  let turn = angleTo({ x: -half.x, y: -half.y }) - start;
  if (sweep === 0 && turn > 0) turn -= 2 * Math.PI;
  if (sweep !== 0 && turn < 0) turn += 2 * Math.PI;
  const middle = {
    x: cos * centre.x - sin * centre.y + (from.x + to.x) / 2,
    y: sin * centre.x + cos * centre.y + (from.y + to.y) / 2,
  };
  const axes = { long: { x: rx * cos, y: rx * sin }, short: { x: -ry * sin, y: ry * cos } };
  return ellipseArc(middle, axes, { from: start, to: start + turn });
}
