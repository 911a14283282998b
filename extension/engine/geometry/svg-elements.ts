/** Units of lengths in an SVG, in mm. */
const units: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  in: 25.4,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  q: 0.25,
};

const lengthForm = /^\s*([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*([a-z%]*)\s*$/i;

/** Size in mm of the unit that a length is written in; undefined for pixels, percentages and bare numbers. */
export function lengthUnit(text: string): number | undefined {
  const unit = lengthForm.exec(text)?.[2]?.toLowerCase() ?? '';
  return units[unit];
}

/** A length in units of the drawing; undefined where it is none. */
export function lengthOf(text: string | undefined): number | undefined {
  const [, number, unit = ''] = lengthForm.exec(text ?? '') ?? [];
  if (number === undefined || unit === '%') return undefined;
  const size = units[unit.toLowerCase()];
  // 96 pixels are an inch.
  return Number(number) * (size === undefined ? 1 : (size / 25.4) * 96);
}

type Attributes = Readonly<Record<string, string>>;

/** An attribute as a length; 0 where there is none. */
function number(attributes: Attributes, key: string): number {
  return lengthOf(attributes[key]) ?? 0;
}

/** Radii of a rectangle's corners: one that is not given is the other, and none passes the middle. */
function cornerRadii(attributes: Attributes, w: number, h: number): readonly [number, number] {
  const [rx, ry] = [lengthOf(attributes['rx']), lengthOf(attributes['ry'])];
  const within = (radius: number, side: number): number => Math.min(Math.max(radius, 0), side / 2);
  return [within(rx ?? ry ?? 0, w), within(ry ?? rx ?? 0, h)];
}

function rectPath(attributes: Attributes): string | undefined {
  const [x, y] = [number(attributes, 'x'), number(attributes, 'y')];
  const [w, h] = [number(attributes, 'width'), number(attributes, 'height')];
  if (w <= 0 || h <= 0) return undefined;
  const [rx, ry] = cornerRadii(attributes, w, h);
  if (rx === 0 || ry === 0) return `M${x} ${y}H${x + w}V${y + h}H${x}Z`;
  const corner = (toX: number, toY: number): string => `A${rx} ${ry} 0 0 1 ${toX} ${toY}`;
  return [
    `M${x + rx} ${y}H${x + w - rx}${corner(x + w, y + ry)}V${y + h - ry}`,
    `${corner(x + w - rx, y + h)}H${x + rx}${corner(x, y + h - ry)}V${y + ry}`,
    `${corner(x + rx, y)}Z`,
  ].join('');
}

function ellipsePath(attributes: Attributes, rx: number, ry: number): string | undefined {
  if (!(rx > 0) || !(ry > 0)) return undefined;
  const [cx, cy] = [number(attributes, 'cx'), number(attributes, 'cy')];
  const half = (toX: number): string => `A${rx} ${ry} 0 0 1 ${toX} ${cy}`;
  return `M${cx - rx} ${cy}${half(cx + rx)}${half(cx - rx)}Z`;
}

function linePath(attributes: Attributes): string {
  const [x1, y1, x2, y2] = ['x1', 'y1', 'x2', 'y2'].map((key) => number(attributes, key));
  return `M${String(x1)} ${String(y1)}L${String(x2)} ${String(y2)}`;
}

function pointsPath(attributes: Attributes, end: string): string | undefined {
  const points = (attributes['points'] ?? '').trim();
  return points === '' ? undefined : `M${points}${end}`;
}

/** An element as the path that draws the same; undefined where it draws none. */
export function elementPath(name: string, attributes: Attributes): string | undefined {
  switch (name) {
    case 'path':
      return attributes['d'];
    case 'rect':
      return rectPath(attributes);
    case 'circle': {
      const radius = number(attributes, 'r');
      return ellipsePath(attributes, radius, radius);
    }
    case 'ellipse':
      return ellipsePath(attributes, number(attributes, 'rx'), number(attributes, 'ry'));
    case 'line':
      return linePath(attributes);
    case 'polygon':
      return pointsPath(attributes, 'Z');
    case 'polyline':
      return pointsPath(attributes, '');
    default:
      return undefined;
  }
}
