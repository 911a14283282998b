import { describe, expect, test } from 'vitest';
import { shapeAnswer } from '../../../extension/engine/book/shape-answer.ts';
import { readShape } from '../../../extension/engine/geometry/shape-text.ts';
import { shapeWords } from '../../../extension/engine/geometry/shape.ts';

const inches = { units: 'in', currency: 'USD' } as const;
const metric = { units: 'mm', currency: 'USD' } as const;

function answer(text: string, settings: typeof inches | typeof metric = inches): string {
  const settled = shapeAnswer(text, settings);
  return settled.ok ? settled.value : settled.problem.message;
}

describe('shapeAnswer', () => {
  test('sizes get the unit of the job, marks become words', () => {
    expect(answer('RoundRect(26, 15", 2 in)')).toBe('roundrect(26 in, 15 in, 2 in)');
    expect(answer('circle( 200 )', metric)).toBe('circle(200 mm)');
  });

  test('what is no outline, or has too few sizes, is told with an example', () => {
    expect(answer('square(3)')).toContain('“square(3)” is no outline');
    expect(answer('26 x 15', metric)).toContain('such as rect(500 mm, 300 mm)');
    expect(answer('rect(20 in)')).toContain('rect takes length, width, not 1');
    expect(answer('rect(20 in, wide)')).toContain('“wide” does not begin with a number');
  });

  test('every outline that a cell can hold is understood as the cell reads it', () => {
    for (const [word, sizes] of Object.entries(shapeWords)) {
      const text = `${word}(${sizes.map((_, at) => ['9', '7 1/2', '1'][at]).join(', ')})`;
      const read = readShape(text, { settings: inches });
      expect(read.ok ? read.value.text : read.problem.message).toBe(answer(text));
    }
  });
});
