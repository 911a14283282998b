import type { Point } from './outline.ts';
import { lengthOf, lengthUnit } from './svg-elements.ts';

/** The page of an SVG drawing. */
export interface SvgPage {
  /** Size of a unit of the drawing in mm; undefined where the page does not say. */
  readonly unit: number | undefined;
  /** From a point of the drawing, y down, to one above its lower left corner, or where `data-zero` says. */
  readonly upright: (point: Point) => Point;
}

interface ViewBox {
  readonly left: number;
  readonly bottom: number;
  readonly across: number;
  readonly down: number;
}

function viewBoxOf(text: string | undefined): ViewBox | undefined {
  const box = (text ?? '').trim().split(/[\s,]+/);
  const [left = NaN, top = NaN, across = NaN, down = NaN] = box.map(Number);
  return Number.isFinite(left + top) && across > 0 && down > 0
    ? { left, bottom: top + down, across, down }
    : undefined;
}

/** A size of the page in mm; undefined where it is in pixels, a share, or not there. */
function millimetres(text: string | undefined): number | undefined {
  const [unit, size] = [lengthUnit(text ?? ''), Number.parseFloat(text ?? '')];
  return unit !== undefined && size > 0 ? unit * size : undefined;
}

/** Where a drawing says that its outline was measured from, in its own frame. */
function zeroOf(text: string | undefined): Point | undefined {
  const [x = NaN, y = NaN] = (text ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  return text !== undefined && Number.isFinite(x + y) ? { x, y } : undefined;
}

/**
 * The page of a drawing, from the attributes of its root.
 *
 * @source W3C, Scalable Vector Graphics (SVG) 1.1, chapter 7: without a view box 96 units are an inch
 */
export function svgPage(attributes: Readonly<Record<string, string>>): SvgPage {
  const { width, height } = attributes;
  const [across, down] = [millimetres(width), millimetres(height)];
  const box = viewBoxOf(attributes['viewBox']);
  if (box === undefined) {
    const bottom = lengthOf(height) ?? 0;
    return {
      unit: across === undefined && down === undefined ? undefined : 25.4 / 96,
      upright: ({ x, y }) => ({ x, y: bottom - y }),
    };
  }
  const unit = across === undefined ? down && down / box.down : across / box.across;
  const { x: zeroX, y: zeroY } = zeroOf(attributes['data-zero']) ?? { x: box.left, y: box.bottom };
  return { unit, upright: ({ x, y }) => ({ x: x - zeroX, y: zeroY - y }) };
}
