import type { Fix, Place, Problem } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import { outlineAddress } from './outline-address.ts';
import type { OutlineSource } from './outline-files.ts';
import { faultProblem } from './outline-in-drawing.ts';
import { outlineProblem } from './outline-problems.ts';
import { isPartSize, sizeRange } from './outline-size.ts';
import { lengthWords } from './outline-words.ts';
import type { Point } from './outline.ts';
import type { FreeShape, Shape } from './shape.ts';
import { soundOutline } from './sound-outline.ts';
import { traced } from './traced-outline.ts';

/** A shape that was read, with its canonical text. */
interface Read {
  readonly shape: Shape;
  readonly text: string;
}

interface Options {
  readonly settings: UnitSettings;
  readonly strict?: boolean;
  readonly place?: Place;
  readonly outlines?: OutlineSource;
}

const polygonForm = /^\s*polygon\s*\(([^()]*)\)\s*$/i;
const pathForm = /^\s*path\s*\(\s*"([^"]*)"\s*(?:,([^()"]*))?\)\s*$/i;

/** Whether a text is a polygon or a path, whatever it holds. */
export function isFreeText(text: string): boolean {
  return polygonForm.test(text) || pathForm.test(text);
}

/** Whether a text names the outline of a drawing file. */
export function isPathText(text: string): boolean {
  return pathForm.test(text);
}

/** The polygon through points in mm, joined in their order; or what is wrong with it and where. */
export function polygonShape(sizes: readonly number[], settings: UnitSettings): Result<FreeShape> {
  if (sizes.length % 2 === 1) {
    return failed(outlineProblem('polygon-points-odd', { given: sizes.length }));
  }
  if (sizes.length < 6) {
    return failed(outlineProblem('polygon-points-few', { given: sizes.length / 2 }));
  }
  const points = sizes.flatMap((x, index): readonly Point[] =>
    index % 2 === 0 ? [{ x, y: sizes[index + 1] ?? 0 }] : [],
  );
  const sound = soundOutline(points);
  const what = 'The polygon';
  if ('kind' in sound) return failed(faultProblem(sound, what, settings));
  // Whoever typed points meant each of them.
  const outline = traced({ ...sound, corners: sound.points.map((_, index) => index) });
  if (isPartSize(outline)) return ok({ kind: 'polygon', outline });
  const { left, right, bottom, top } = outline.box;
  return failed(
    outlineProblem('polygon-size', {
      what,
      length: lengthWords(right - left, settings),
      width: lengthWords(top - bottom, settings),
      ...sizeRange(settings),
    }),
  );
}

/** The outline that lies in a drawing file. */
export function pathShape(
  address: string,
  unit: number | undefined,
  { outlines, settings }: Pick<Options, 'outlines' | 'settings'>,
): Result<FreeShape> {
  if (outlineAddress(address) === undefined) {
    return failed(outlineProblem('outline-address-wrong', { address }));
  }
  if (outlines === undefined) return failed(outlineProblem('outline-not-read-here', { address }));
  const outline = outlines({ address, unit, settings });
  if (!outline.ok) return outline;
  const size = unit === undefined ? {} : { unit };
  return ok({ kind: 'path', address, ...size, outline: outline.value });
}

/** Ways to say what the numbers of a drawing are in, written into the cell. */
function unitFixes(address: string, place: Place): readonly Fix[] {
  const units = [
    ['1mm', 'One unit of the drawing is 1 mm'],
    ['1in', 'One unit of the drawing is 1 in'],
    ['1cm', 'One unit of the drawing is 1 cm'],
  ];
  return units.map(([unit = '', title = '']) => ({
    title,
    place,
    text: `path("${address}", ${unit})`,
  }));
}

function withFixes(problem: Problem, address: string, place: Place | undefined): Problem {
  const asksUnit = ['outline-without-unit', 'outline-tiny', 'outline-huge'].includes(problem.code);
  return place === undefined || !asksUnit
    ? problem
    : { ...problem, fixes: unitFixes(address, place) };
}

/** The address and unit of a path as they are written in a cell, without looking for its file. */
export function readPathText(
  text: string,
  options: Options,
): Result<{ readonly address: string; readonly unit: number | undefined; readonly text: string }> {
  const [, written = '', unitText] = pathForm.exec(text) ?? [];
  const address = written.trim();
  if (outlineAddress(address) === undefined) {
    return failed(outlineProblem('outline-address-wrong', { address }));
  }
  if (unitText === undefined) return ok({ address, unit: undefined, text: `path("${address}")` });
  const unit = readQuantity(unitText, { ...options, wanted: length });
  if (!unit.ok) return unit;
  const { value, text: said } = unit.value;
  return ok({ address, unit: value.base, text: `path("${address}", ${said})` });
}

function readPolygon(inside: string, options: Options): Result<Read> {
  const sizes: number[] = [];
  const texts: string[] = [];
  for (const part of inside.trim() === '' ? [] : inside.split(',')) {
    const size = readQuantity(part, { ...options, wanted: length });
    if (!size.ok) return size;
    sizes.push(size.value.value.base);
    texts.push(size.value.text);
  }
  const shape = polygonShape(sizes, options.settings);
  return shape.ok ? ok({ shape: shape.value, text: `polygon(${texts.join(', ')})` }) : shape;
}

/** Reads a polygon of points or the path of a drawing file. */
export function readFreeShape(text: string, options: Options): Result<Read> {
  const polygon = polygonForm.exec(text);
  if (polygon !== null) return readPolygon(polygon[1] ?? '', options);
  const path = readPathText(text, options);
  if (!path.ok) return path;
  const { address, unit } = path.value;
  const shape = pathShape(address, unit, options);
  return shape.ok
    ? ok({ shape: shape.value, text: path.value.text })
    : failed(withFixes(shape.problem, address, options.place));
}
