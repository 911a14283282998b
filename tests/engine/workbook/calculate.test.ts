import { describe, expect, test } from 'vitest';
import { calculate, openCalculator } from '../../../extension/engine/workbook/calculate.ts';
import { bookOf } from '../../helpers/book-of.ts';
import { catalogue } from '../../helpers/workbook-of.ts';

const inches = { units: 'in', currency: 'USD' } as const;
const base = (text: string): number => {
  const found = calculate(text, inches, catalogue);
  return found.ok && found.value.value.kind === 'quantity' ? found.value.value.base : Number.NaN;
};

describe('calculate', () => {
  test('a formula that stands in no job is answered in base units', () => {
    // (1 3/8 in − 1 1/8 in) / 2 = 1/8 in = 3.175 mm: geometry.
    expect(base('=BEARING.OFFSET(1 3/8in, 1 1/8in)')).toBeCloseTo(3.175, 9);
    expect(base('5 1/2 in')).toBeCloseTo(139.7, 9);
  });

  test('what cannot be answered says why, without a place', () => {
    const found = calculate('=length + 1in', inches, catalogue);
    expect(found.ok).toBe(false);
    expect(!found.ok && found.problem.place).toBeUndefined();
  });

  test.each(['=1e-300in*1', '=1e-300*0.5', '=MAX(1e-305in, 0in)'])(
    '%s is too near nothing to be a figure, and says so',
    (text) => {
      const found = calculate(text, inches, catalogue);
      expect(!found.ok && found.problem.code).toBe('no-number');
    },
  );

  test('constants and charts come from a book', () => {
    const found = calculate('=book.ring_step', inches, catalogue, bookOf());
    expect(found.ok && found.value.value.kind).toBe('quantity');
    const chart = calculate('=MIX.CHART(70degF)', inches, catalogue, bookOf());
    expect(chart.ok && chart.value.value.kind).toBe('quantity');
  });
});

describe('openCalculator', () => {
  test('asked again, also after what has no answer, it answers as calculate does', () => {
    const ask = openCalculator(inches, catalogue, bookOf());
    const asked = ['=1in + 2qt', '=RING.LOW(2in, 8in, 15deg)', '=RING.LOW(2in, 8in, 95deg)'];
    for (const text of [...asked, ...asked]) {
      expect(ask(text)).toEqual(calculate(text, inches, catalogue, bookOf()));
    }
  });
});
