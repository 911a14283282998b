import type { UnitSettings } from '../units/quantity.ts';
import { lengthWords } from './outline-words.ts';
import type { Shape } from './shape.ts';

const about = '≈ ';

/** Two sizes, told to be rounded in front where either is. */
export function sidesInWords(length: number, width: number, settings: UnitSettings): string {
  const text = `${lengthWords(length, settings)} × ${lengthWords(width, settings)}`;
  return text.includes(about) ? about + text.replaceAll(about, '') : text;
}

/** A shape as it is said at the bench: `8 in across`, `26 in × 15 in, corners 2 in`. */
export function shapeInWords(shape: Shape, settings: UnitSettings): string {
  switch (shape.kind) {
    case 'circle':
      return `${lengthWords(shape.diameter, settings)} across`;
    case 'oval':
      return `${sidesInWords(shape.length, shape.width, settings)} oval`;
    case 'rect':
      return sidesInWords(shape.length, shape.width, settings);
    case 'roundrect': {
      const outside = sidesInWords(shape.length, shape.width, settings);
      if (shape.radius === 0) return outside;
      return `${outside}, corners ${lengthWords(shape.radius, settings)}`;
    }
    case 'polygon':
    case 'path':
    case 'grown': {
      const { left, right, bottom, top } = shape.outline.box;
      return `${sidesInWords(right - left, top - bottom, settings)}, own outline`;
    }
  }
}
