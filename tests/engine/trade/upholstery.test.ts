import { describe, expect, test } from 'vitest';
import {
  boardMass,
  glueCoverage,
  glueNeed,
  repeatLength,
  stapleCount,
  wrapSize,
} from '../../../extension/engine/trade/upholstery.ts';

describe('wrapSize', () => {
  test('edge, return and grip are added on both sides', () => {
    expect(wrapSize(24, { edge: 0.25, turn: 1, grip: 1 })).toBe(28.5);
  });
});

describe('glueCoverage and glueNeed', () => {
  test('one is the other turned round', () => {
    const need = glueNeed({ area: 1000, faces: 1 }, 0.02, 0.25);
    expect(glueCoverage(need, 0.25, 0.02)).toBeCloseTo(1000, 9);
    expect(glueNeed({ area: 1000, faces: 2 }, 0.02, 0.25)).toBe(2 * need);
  });
});

describe('stapleCount', () => {
  test('a whole number of gaps takes as many staples', () => {
    expect(stapleCount(25.4 * 0.3, 25.4 * 0.1)).toBe(3);
    expect(stapleCount(100.1, 25)).toBe(5);
  });
});

describe('boardMass', () => {
  test('1 m² of 10 mm at 0.7 g/cm3 weighs 7 kg', () => {
    expect(boardMass(1e6, 10, 0.0007)).toBeCloseTo(7000, 9);
  });
});

describe('repeatLength', () => {
  const inch = 25.4;

  test('a larger repeat never takes less cloth', () => {
    const lengths = [0, 2, 3, 14, 15, 20, 28, 40, 54].map(
      (repeat) => repeatLength(1000, { across: repeat * inch, along: 0 }, 54 * inch) ?? NaN,
    );
    expect([...lengths].sort((a, b) => a - b)).toEqual(lengths);
  });

  test('outside the chart there is no answer', () => {
    expect(repeatLength(1000, { across: 30 * inch, along: 25 * inch }, 54 * inch)).toBeUndefined();
    expect(repeatLength(1000, { across: inch, along: inch }, 49 * inch)).toBeUndefined();
  });
});
