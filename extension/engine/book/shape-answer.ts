import { problemMaker } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';

/** The sizes that each outline takes, in words; a polygon takes as many as it has corners. */
const sizesOf: Readonly<Record<string, readonly string[]>> = {
  circle: ['diameter'],
  oval: ['length', 'width'],
  rect: ['length', 'width'],
  roundrect: ['length', 'width', 'radius'],
  polygon: [],
};

/** An outline that lies in a drawing file; what is wrong with the file is told at the cell. */
const drawing = /^\s*path\s*\(\s*"[^"]+"[^"()]*\)\s*$/i;

const shapeProblem = problemMaker({
  'answer-no-shape':
    '“{text}” is no outline; write circle, oval, rect or roundrect with its sizes, such as {example}, polygon with its points, or path with a drawing file.',
  'answer-shape-sizes': '{word} takes {wanted}, not {given}; write it such as {example}.',
});

/**
 * An outline as it is written in the file: sizes without a unit get the job's. Whether an outline of
 * these sizes can be is told at the cell.
 *
 * @example shapeAnswer('rect(20, 10)', { units: 'in', currency: 'USD' }) // rect(20 in, 10 in)
 */
export function shapeAnswer(text: string, settings: UnitSettings): Result<string> {
  const example = settings.units === 'mm' ? 'rect(500 mm, 300 mm)' : 'rect(20 in, 12 in)';
  if (drawing.test(text)) return ok(text.trim());
  const [, name = '', inside = ''] = /^\s*(\w+)\s*\(([^()]*)\)\s*$/.exec(text) ?? [];
  const word = name.toLowerCase();
  const parts = inside.split(',').map((part) => part.trim());
  const wanted = Object.hasOwn(sizesOf, word) ? sizesOf[word] : undefined;
  if (wanted === undefined) return failed(shapeProblem('answer-no-shape', { text, example }));
  if (word !== 'polygon' && parts.length !== wanted.length) {
    const details = { word, wanted: wanted.join(', '), given: String(parts.length), example };
    return failed(shapeProblem('answer-shape-sizes', details));
  }
  const sizes: string[] = [];
  for (const part of parts) {
    const size = readQuantity(part, { settings, wanted: length });
    if (!size.ok) return size;
    sizes.push(size.value.text);
  }
  return ok(`${word}(${sizes.join(', ')})`);
}
