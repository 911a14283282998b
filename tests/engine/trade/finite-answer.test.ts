import { describe, expect, test } from 'vitest';
import { withFiniteAnswer } from '../../../extension/engine/trade/finite-answer.ts';
import { shown } from '../../helpers/calculated.ts';
import { contextOf, entryOf, inches } from '../../helpers/trade-call.ts';

describe('withFiniteAnswer', () => {
  test('an answer that no figure holds is refused, with what was given', () => {
    expect(shown('BOARD.MASS(1e200 m2, 1e200 m, 1g/cm3)')).toMatch(
      /^BOARD\.MASS: area .+, thickness .+, density .+ cannot be calculated with, too large or too small; look at the numbers and their units\.$/,
    );
  });

  test('a shape that grows beyond all figures is refused too', () => {
    expect(shown('SHAPE.GROW(circle(1e307 m), 1e307 m)')).toContain('cannot be calculated with');
  });

  test('other answers and refusals are left as they are', () => {
    expect(shown('RING.LOW(2in, 7 1/2in, 15deg)')).toBe('≈ 1 in');
    expect(shown('circle(0in)')).toContain('must be more than nothing');
    expect(shown('SHOW(2in, mm)')).toBe('50.8 mm');
  });

  test('a function of rows has no code of this form', () => {
    const entry = entryOf('BUILD.UP');
    expect(withFiniteAnswer(entry)).toBe(entry);
    expect(entry.run?.([], contextOf(inches))).toBeUndefined();
  });
});
