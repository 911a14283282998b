import { describe, expect, test } from 'vitest';
import type { Want } from '../../../extension/engine/formula/checking.ts';
import { quantityType } from '../../../extension/engine/formula/value-type.ts';
import {
  angle,
  length,
  plain,
  temperature,
  type Dimension,
} from '../../../extension/engine/units/dimension.ts';
import { faultOf, typeOf } from '../../helpers/formula-check.ts';
import { wrapChoices } from '../../helpers/formula-scope.ts';

function of(dimension: Dimension): Want {
  return quantityType(dimension);
}

describe('checkFormula: what the cell wants', () => {
  test.each([
    ['=length', of(length), 'a length'],
    ['=0', of(length), 'zero'],
    ['=""', of(length), 'blank'],
    ['=PI()/12', of(angle), 'a plain number'],
    [
      '=IF(taxed, round_tube, build)',
      { kind: 'choice', choices: wrapChoices } as const,
      'a choice',
    ],
    ['=yes', { kind: 'yes-no' } as const, 'yes or no'],
    ['=build', { kind: 'text' } as const, 'a choice'],
    ['=circle(3in)', { kind: 'shape' } as const, 'a shape'],
  ])('%s fits', (text, wanted, type) => {
    expect(typeOf(text, wanted)).toBe(type);
  });

  test.each([
    ['=area', of(length), 'This formula gives an area, but a length is wanted here.'],
    [
      '=2',
      of(length),
      'This formula gives a plain number, but a length is wanted here. Write 2in.',
    ],
    ['=length', of(plain), 'This formula gives a length, but a plain number is wanted here.'],
    ['=tilt / 2', of(angle), 'RADIANS(DEGREES(tilt) / 2) is an angle again.'],
    ['=0', of(temperature), 'Zero degrees is written with its unit'],
    ['=length', { kind: 'text' } as const, 'Write SHOW(length).'],
    [
      '=note',
      { kind: 'choice', choices: wrapChoices } as const,
      'one of round_baffle, round_tube, square_wall is wanted here',
    ],
    ['=length', { kind: 'yes-no' } as const, 'yes or no is wanted here'],
  ])('%s does not fit: %s', (text, wanted, message) => {
    expect(faultOf(text, wanted)).toContain(message);
  });
});
