import { describe, expect, test } from 'vitest';
import { checkFormula } from '../../../extension/engine/formula/check.ts';
import { completeEntry } from '../../../extension/engine/formula/complete-entry.ts';
import { parseFormula } from '../../../extension/engine/formula/parse.ts';
import { quantityType } from '../../../extension/engine/formula/value-type.ts';
import { length, plain, temperature } from '../../../extension/engine/units/dimension.ts';
import { smallScope } from '../../helpers/formula-scope.ts';

const inches = smallScope();
const millimetres = smallScope({ units: 'mm', currency: 'EUR' });

describe('completeEntry', () => {
  test.each([
    ['=length + 0.5', '=length + 0.5in'],
    ['=0.5 + length', '=0.5in + length'],
    ['=length + 0.5 + 0.25', '=length + 0.5in + 0.25in'],
    ['=length - (0.5)', '=length - (0.5in)'],
    ['=length + -0.5', '=length + -0.5in'],
    ['=length + 1/2', '=length + 1/2in'],
    ['=length > 2', '=length > 2in'],
    ['=area < 3', '=area < 3sqft'],
    ['=tilt + 5', '=tilt + 5deg'],
    ['=price + 2', '=price + 2USD'],
    ['=job.temperature > 70', '=job.temperature > 70degF'],
    ['=job.temperature + 5', '=job.temperature + 5dF'],
    ['=max(length, 2)', '=MAX(length, 2in)'],
    ['=MAX(all(ring).depth; 2)', '=MAX(all(ring).depth; 2in)'],
    ['=CIRCLE(8)', '=circle(8in)'],
    ['=RING.LOW(3, 8, 15)', '=RING.LOW(3in, 8in, 15deg)'],
    ['=if(length > 2, length, 4)', '=IF(length > 2in, length, 4in)'],
    ['=(length + 1) * 2', '=(length + 1in) * 2'],
  ])('%s is stored as %s', (typed, stored) => {
    expect(completeEntry(typed, inches, 'any')).toBe(stored);
  });

  test.each([
    ['=2', '=2in'],
    ['=1/2', '=1/2in'],
    ['=1 + 2', '=1in + 2in'],
    ['=MAX(1, 2)', '=MAX(1in, 2in)'],
    ['=IF(taxed, 1, 2)', '=IF(taxed, 1in, 2in)'],
  ])('%s in a column of lengths is stored as %s', (typed, stored) => {
    expect(completeEntry(typed, inches, quantityType(length))).toBe(stored);
  });

  test.each([
    '=length * 2',
    '=length / 2',
    '=length + 0',
    '=length ^ 2',
    '=layers + 1',
    '=length + 0.5in',
    '=SIN(0.5)',
    '=IF(layers > 2, "a", "b")',
    '="length + 0.5"',
    '=length +',
    '=length + 1 3/8',
    'length + 0.5',
    '=unknown + 2',
    '=length  +  1in',
  ])('%s stays as it is', (typed) => {
    expect(completeEntry(typed, inches, 'any')).toBe(typed);
  });

  test('a plain column asks for no unit', () => {
    expect(completeEntry('=2', inches, quantityType(plain))).toBe('=2');
  });

  test('a metric job gets millimetres', () => {
    expect(completeEntry('=length + 12', millimetres, 'any')).toBe('=length + 12mm');
    expect(completeEntry('=use + 3', millimetres, 'any')).toBe('=use + 3ml');
    expect(completeEntry('=-10', millimetres, quantityType(temperature))).toBe('=-10degC');
  });

  test('what is stored has no fault left and is not changed again', () => {
    for (const typed of ['=length + 0.5 > 2', '=max(1, length, 1/2)', '=IF(area > 2, 3, length)']) {
      const stored = completeEntry(typed, inches, 'any');
      const { expression } = parseFormula(stored);
      expect(expression && checkFormula(expression, inches).problems).toEqual([]);
      expect(completeEntry(stored, inches, 'any')).toBe(stored);
    }
  });
});
