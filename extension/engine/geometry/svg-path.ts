import svgPath from 'svgpath';
import { cubic, type Curve } from './curve-points.ts';
import type { DrawnLine } from './drawn-file.ts';
import type { Point } from './outline.ts';
import { svgArc } from './svg-arc.ts';
import type { SvgPage } from './svg-page.ts';

type Segment = Parameters<Parameters<ReturnType<typeof svgPath>['iterate']>[0]>[0];

interface Placed {
  readonly names: readonly string[];
  /** The innermost first. */
  readonly transforms: readonly string[];
}

/** A quadratic curve as the cubic that is the same. */
function quadratic(from: Point, handle: Point, to: Point): Curve {
  const towards = (point: Point): Point => ({
    x: point.x + ((handle.x - point.x) * 2) / 3,
    y: point.y + ((handle.y - point.y) * 2) / 3,
  });
  return cubic(from, towards(from), towards(to), to);
}

/** What a command draws from a point on, in the drawing's own frame; undefined for those that move only. */
function drawnBy(segment: Segment, from: Point): Point | Curve | undefined {
  switch (segment[0]) {
    case 'H':
      return { x: segment[1], y: from.y };
    case 'V':
      return { x: from.x, y: segment[1] };
    case 'L':
      return { x: segment[1], y: segment[2] };
    case 'C': {
      const [, ax, ay, bx, by, x, y] = segment;
      return cubic(from, { x: ax, y: ay }, { x: bx, y: by }, { x, y });
    }
    case 'Q': {
      const [, ax, ay, x, y] = segment;
      return quadratic(from, { x: ax, y: ay }, { x, y });
    }
    case 'A':
      return svgArc(from, segment);
    // Every other command was made one of these, moves or closes.
    default:
      return undefined;
  }
}

/** One line for each part of a path that begins with a move, upright; or why it cannot be followed. */
export function pathLines(
  drawn: string,
  { names, transforms }: Placed,
  { upright }: SvgPage,
): readonly DrawnLine[] | string {
  let path = svgPath(drawn);
  if ('err' in path && typeof path.err === 'string' && path.err !== '') {
    const where = names[0] === undefined ? '' : ` ${names[0]}`;
    return `the path${where} cannot be followed (${path.err})`;
  }
  for (const transform of transforms) path = path.transform(transform);
  const lines: DrawnLine[] = [];
  let start: Point = { x: 0, y: 0 };
  let parts: (Point | Curve)[] = [];
  const end = (closed: boolean): void => {
    if (parts.length > 0) lines.push({ names, start: upright(start), parts, closed });
    parts = [];
  };
  path
    .abs()
    .unshort()
    .iterate((segment, _index, x, y) => {
      const part = drawnBy(segment, { x, y });
      if (segment[0] === 'M') {
        end(false);
        start = { x: segment[1], y: segment[2] };
      } else if (part === undefined) end(true);
      else if ('at' in part) parts.push({ ...part, at: (at) => upright(part.at(at)) });
      else parts.push(upright(part));
    });
  end(false);
  return lines;
}
