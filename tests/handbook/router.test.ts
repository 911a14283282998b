import { describe, expect, test } from 'vitest';
import { numberOf, shown } from '../helpers/calculated.ts';

describe('rebates of a bearing (formula: WOOD magazine, “Cut perfect rabbets”; set: Popular Woodworking, June 2003)', () => {
  test.each([
    ['3/8in', '1/2 in'],
    ['1/2in', '7/16 in'],
    ['5/8in', '3/8 in'],
    ['3/4in', '5/16 in'],
    ['7/8in', '1/4 in'],
    ['15/16in', '7/32 in'],
    ['1in', '3/16 in'],
    ['1 1/8in', '1/8 in'],
    ['1 1/4in', '1/16 in'],
    ['1 3/8in', '0 in'],
  ])('a 1 3/8 in cutter over a %s bearing: %s', (bearing, rebate) => {
    const settings = { units: 'in', currency: 'USD', fraction: 32 } as const;
    expect(shown(`BEARING.OFFSET(1 3/8in, ${bearing})`, settings)).toBe(rebate);
  });

  test.each([
    ['3/8in', '7/16 in'],
    ['1/2in', '3/8 in'],
    ['5/8in', '5/16 in'],
    ['3/4in', '1/4 in'],
    ['7/8in', '3/16 in'],
    ['1in', '1/8 in'],
    ['1 1/8in', '1/16 in'],
    ['1 1/4in', '0 in'],
  ])('a 1 1/4 in cutter over a %s bearing: %s', (bearing, rebate) => {
    expect(shown(`BEARING.OFFSET(1 1/4in, ${bearing})`)).toBe(rebate);
  });

  test('the bearing for a rebate is the cutter less twice the rebate (WOOD magazine)', () => {
    expect(shown('BEARING.SIZE(1 3/8in, 1/8in)')).toBe('1 1/8 in');
    expect(shown('BEARING.SIZE(1 3/8in, 3/8in)')).toBe('5/8 in');
  });

  test('a bearing 1/8 in smaller than the bit leaves 1/16 in a side for covering (common practice, no source)', () => {
    expect(shown('BEARING.OFFSET(1/2in, 3/8in)')).toBe('1/16 in');
  });
});

describe('guide bushings', () => {
  test.each([
    ['3/4in', '1/2in', 1 / 8, 'routerforums.com, quoting WOOD'],
    ['1in', '1/2in', 1 / 4, 'routerforums.com'],
    ['30mm', '10mm', 10 / 25.4, 'steadyprintshop.com'],
    ['15mm', '9mm', 3 / 25.4, 'ukworkshop.co.uk'],
  ])('%s with a %s bit: %d in (%s)', (bushing, bit, offset) => {
    expect(numberOf(`BUSHING.OFFSET(${bushing}, ${bit})`, 'in')).toBeCloseTo(offset, 12);
  });

  test('hole = template − bushing + bit (ukworkshop.co.uk)', () => {
    const template = numberOf('BUSHING.TEMPLATE(100mm, 15mm, 9mm, inside)', 'mm');
    expect(template - 15 + 9).toBeCloseTo(100, 12);
  });
});

describe('circle jig (goreading.org, mounting rings for a 12 in driver)', () => {
  test('a 13 in ring is cut with the near edge of the bit 6 1/2 in from the pivot', () => {
    const centre = numberOf('JIG.RADIUS(13in, 1/2in, disc)', 'in');
    expect(centre - 0.25).toBeCloseTo(6.5, 12);
  });

  test('an 11 in hole is cut with the far edge of the bit 5 1/2 in from the pivot', () => {
    const centre = numberOf('JIG.RADIUS(11in, 1/2in, hole)', 'in');
    expect(centre + 0.25).toBeCloseTo(5.5, 12);
  });
});

describe('hole saws (engineerfix.com; a trade listing gives 1 1/4 in as 32 mm)', () => {
  test.each([
    ['2 1/8in', 54],
    ['1 1/4in', 32],
    ['1in', 25],
  ])('%s is the %d mm saw', (inches, mm) => {
    expect(Math.round(numberOf(`HOLESAW.SIZE(${inches})`, 'mm'))).toBe(mm);
  });
});

describe('grilles', () => {
  test('vinyl of 1.2 mm on edge and frame with 1/32 in room takes 6.4 mm (common practice, no source)', () => {
    const left = numberOf('GRILLE.SIZE(200mm, 1.2mm, 1/32in)', 'mm');
    expect(200 - left).toBeCloseTo(2 * (2 * 1.2 + 0.79375), 9);
  });
});
