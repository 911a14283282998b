import type { Place } from '../problems.ts';
import { failed, ok, unreachable, type Result } from '../result.ts';
import { length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import { comparedValues } from '../units/same-value.ts';
import { exactText, showQuantity } from '../units/show.ts';
import type { OutlineSource } from './outline-files.ts';
import { isFreeText, readFreeShape } from './free-shape.ts';
import { shapeProblem } from './shape-problems.ts';
import {
  isPlain,
  shapeLength,
  shapeSizes,
  shapeWidth,
  shapeWords,
  type FreeShape,
  type PlainShape,
  type Shape,
} from './shape.ts';

type Show = (mm: number) => string;

function millimetres(base: number): { base: number; dimension: typeof length } {
  return { base, dimension: length };
}

function freeText(shape: FreeShape, show: Show): string {
  switch (shape.kind) {
    case 'polygon': {
      const points = shape.outline.points.flatMap(({ x, y }) => [show(x), show(y)]);
      return `polygon(${points.join(', ')})`;
    }
    case 'path': {
      const unit = shape.unit === undefined ? '' : `, ${show(shape.unit)}`;
      return `path("${shape.address}"${unit})`;
    }
    case 'grown': {
      const corners = shape.corners === 'square' ? ', square' : '';
      return `SHAPE.GROW(${textOf(shape.of, show)}, ${show(shape.distance)}${corners})`;
    }
  }
}

function textOf(shape: Shape, show: Show): string {
  if (!isPlain(shape)) return freeText(shape, show);
  return `${shape.kind}(${shapeSizes(shape).map(show).join(', ')})`;
}

/** A shape as a file and a formula write it, exactly: `circle(8 in)`. Equal shapes have equal texts. */
export function shapeText(shape: Shape, settings: UnitSettings): string {
  return textOf(shape, (mm) => exactText(millimetres(mm), settings.units));
}

/** A shape as people see it, its sizes rounded like any length. */
export function showShape(shape: Shape, settings: UnitSettings): string {
  return textOf(shape, (mm) => showQuantity(millimetres(mm), settings).text);
}

/** The plain shape of this kind with these sizes in mm, which are as many as the kind takes. */
export function shapeOf(kind: PlainShape['kind'], sizes: readonly number[]): PlainShape {
  const [first = 0, second = 0, third = 0] = sizes;
  switch (kind) {
    case 'circle':
      return { kind, diameter: first };
    case 'oval':
    case 'rect':
      return { kind, length: first, width: second };
    case 'roundrect':
      return { kind, length: first, width: second, radius: third };
    default:
      return unreachable(kind);
  }
}

/** The plain shape, or why no outline has these sizes. */
export function validShape(shape: PlainShape, settings: UnitSettings): Result<PlainShape> {
  const shown = (size: number): string => showQuantity(millimetres(size), settings).text;
  const whole = showShape(shape, settings);
  const names: readonly string[] = shapeWords[shape.kind];
  const sizes = shapeSizes(shape);
  const wrong = names.findIndex((name, index) => name !== 'radius' && !((sizes[index] ?? 0) > 0));
  if (wrong >= 0) {
    const details = { size: names[wrong] ?? '', shape: whole, value: shown(sizes[wrong] ?? 0) };
    return failed(shapeProblem('shape-size-not-positive', details));
  }
  if (shape.kind !== 'roundrect') return ok(shape);
  const value = shown(shape.radius);
  if (!(shape.radius >= 0)) {
    return failed(shapeProblem('shape-radius-negative', { shape: whole, value }));
  }
  const most = Math.min(shapeLength(shape), shapeWidth(shape)) / 2;
  if (comparedValues(shape.radius, most) > 0) {
    const details = { shape: whole, value, most: shown(most) };
    return failed(shapeProblem('shape-radius-too-large', details));
  }
  return ok(shape.radius > most ? { ...shape, radius: most } : shape);
}

export interface ShapeOptions {
  readonly settings: UnitSettings;
  /** Refuses bare numbers, as the reader of files does; else they are completed. */
  readonly strict?: boolean;
  readonly place?: Place;
  /** Finds outlines in the drawing files of the job; without it a path has none. */
  readonly outlines?: OutlineSource;
}

const form = /^\s*(circle|oval|rect|roundrect)\s*\(([^()]*)\)\s*$/i;

function isShapeWord(word: string): word is PlainShape['kind'] {
  return Object.hasOwn(shapeWords, word);
}

/**
 * Reads a shape made of literals: `circle(8 in)`, `roundrect(26in, 15in, 2in)`,
 * `polygon(0in, 0in, 24in, 0in, 20in, 14in)`, `path("outlines/door.svg#left")`.
 *
 * @returns the shape with its canonical text, in which each size keeps the unit it was written in
 */
export function readShape(
  text: string,
  options: ShapeOptions,
): Result<{ readonly shape: Shape; readonly text: string }> {
  if (isFreeText(text)) return readFreeShape(text, options);
  const { settings } = options;
  const found = form.exec(text);
  const word = (found?.[1] ?? '').toLowerCase();
  const example = shapeText({ kind: 'circle', diameter: 203.2 }, settings);
  if (found === null || !isShapeWord(word)) {
    return failed(shapeProblem('shape-not-read', { text, example }));
  }
  const inside = (found[2] ?? '').trim();
  const parts = inside === '' ? [] : inside.split(',');
  const names = shapeWords[word];
  if (parts.length !== names.length) {
    const wanted = names.join(', ');
    const details = { word, wanted, text, given: parts.length, example };
    return failed(shapeProblem('shape-sizes-miscounted', details));
  }
  const read = parts.map((part) => readQuantity(part, { ...options, wanted: length }));
  const sizes: number[] = [];
  const texts: string[] = [];
  for (const size of read) {
    if (!size.ok) return size;
    sizes.push(size.value.value.base);
    texts.push(size.value.text);
  }
  const shape = validShape(shapeOf(word, sizes), settings);
  return shape.ok
    ? ok({ shape: shape.value, text: `${word}(${texts.join(', ')})` })
    : failed(shape.problem);
}
