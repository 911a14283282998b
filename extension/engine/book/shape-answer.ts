import type { CellValue } from '../formula/value.ts';
import { problemMaker } from '../problems.ts';
import { failed, ok, type Result } from '../result.ts';
import { length } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';

type ShapeWord = Extract<CellValue, { readonly kind: 'shape' }>['shape']['kind'];

/** The sizes that each outline takes, in words. */
const sizesOf: Readonly<Record<ShapeWord, readonly string[]>> = {
  circle: ['diameter'],
  oval: ['length', 'width'],
  rect: ['length', 'width'],
  roundrect: ['length', 'width', 'radius'],
};

const shapeProblem = problemMaker({
  'answer-no-shape':
    '“{text}” is no outline; write circle, oval, rect or roundrect with its sizes, such as {example}.',
  'answer-shape-sizes': '{word} takes {wanted}, not {given}; write it such as {example}.',
});

function isShapeWord(word: string): word is ShapeWord {
  return Object.hasOwn(sizesOf, word);
}

/**
 * An outline as it is written in the file: sizes without a unit get the job's. Whether an outline of
 * these sizes can be is told at the cell.
 *
 * @example shapeAnswer('rect(20, 10)', { units: 'in', currency: 'USD' }) // rect(20 in, 10 in)
 */
export function shapeAnswer(text: string, settings: UnitSettings): Result<string> {
  const example = settings.units === 'mm' ? 'rect(500 mm, 300 mm)' : 'rect(20 in, 12 in)';
  const [, name = '', inside = ''] = /^\s*(\w+)\s*\(([^()]*)\)\s*$/.exec(text) ?? [];
  const word = name.toLowerCase();
  if (!isShapeWord(word)) return failed(shapeProblem('answer-no-shape', { text, example }));
  const parts = inside.split(',').map((part) => part.trim());
  const wanted = sizesOf[word];
  if (parts.length !== wanted.length) {
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
