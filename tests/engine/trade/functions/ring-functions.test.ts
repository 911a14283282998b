import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inches, millimetres, numberOf, shown } from '../../../helpers/trade-call.ts';

describe('ring functions', () => {
  test.each([
    ['RING.LOW(-1in, 8in)', 'depth is -1 in'],
    ['RING.LOW(2in, 0in)', 'size is 0 in; it must be more than nothing'],
    ['RING.LOW(2in, 8in, -5deg)', 'tilt is -5 deg; it must be at least 0 deg and below 90 deg'],
    ['RING.LOW(2in, 8in, 90deg)', 'below 90 deg'],
    ['oval(9in, 0in)', 'The width of oval(9 in, 0 in) is 0 in; it must be more than nothing'],
    ['RING.LEAST(8in, 15deg, -1in)', 'low is -1 in'],
    ['RING.WALL(1/2in, 8in, 15deg)', 'a depth of at least ≈ 1 1/16 in brings it above the base'],
    ['RING.VOLUME(1/2in, 8in, 15deg)', 'the low side of this ring is ≈ -9/16 in high'],
    ['RING.STRIP(rect(8in, 6in))', 'cannot be bent round the square corners'],
    ['RING.STRIP(8in, 0deg, round_baffle, 5in)', 'does not fit inside a bend of 4 in'],
    ['RING.STRIP(8in, 0deg, round_baffle, -1/8in)', 'thickness is -1/8 in'],
    ['RING.STRIP(8in, 0deg, round_baffle, 1/8in, -1in)', 'lap is -1 in'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });

  test('a low side under the base is a figure for RING.LOW, so that a rule can look at it', () => {
    expect(numberOf('RING.LOW(1/2in, 8in, 15deg)', 'in')).toBeCloseTo(
      0.5 - 4 * Math.sin((15 * Math.PI) / 180),
      12,
    );
  });

  test('a ring whose low side just touches the base still stands', () => {
    const low = numberOf('RING.LEAST(8in, 15deg, 0in)', 'in');
    expect(shown(`RING.WALL(${String(low)} in, 8in, 15deg)`)).toMatch(/ sqin$/);
  });

  test('a length is a circle of that diameter', () => {
    for (const name of ['SHADOW', 'RADIUS', 'STRIP']) {
      const [byLength, byShape] = ['8in', 'circle(8in)'].map((size) =>
        shown(`RING.${name}(${size}, 15deg)`),
      );
      expect(byLength).toBe(byShape);
    }
  });

  test('a shape that is not round leans along its length', () => {
    expect(numberOf('RING.HIGH(2in, oval(9in, 6in), 15deg)', 'in')).toBeCloseTo(
      2 + 4.5 * Math.sin((15 * Math.PI) / 180),
      12,
    );
    expect(numberOf('RING.HIGH(2in, oval(6in, 9in), 15deg)', 'in')).toBeCloseTo(
      2 + 3 * Math.sin((15 * Math.PI) / 180),
      12,
    );
  });

  test('left out, the build is round_baffle and the tilt none', () => {
    expect(shown('RING.HIGH(2in, 8in, 15deg)')).toBe(
      shown('RING.HIGH(2in, 8in, 15deg, round_baffle)'),
    );
    expect(shown('RING.HIGH(2in, 8in)')).toBe('2 in');
    expect(shown('RING.STRIP(8in, , , 1/8in)')).toBe('≈ 24 3/4 in');
  });

  test('the answer does not depend on the units of the arguments', () => {
    const sizes = fc.integer({ min: 64, max: 640 });
    fc.assert(
      fc.property(sizes, fc.integer({ min: 0, max: 40 }), (parts, tilt) => {
        const [inch, metric] = [String(parts / 64), String((parts / 64) * 25.4)];
        const lean = `${String(tilt)}deg`;
        const one = numberOf(`RING.SHADOW(${inch} in, ${lean})`, 'mm2', inches);
        const other = numberOf(`RING.SHADOW(${metric} mm, ${lean})`, 'mm2', millimetres);
        expect(other / one).toBeCloseTo(1, 9);
      }),
    );
  });
});

describe('driver functions', () => {
  test.each([
    ['RING.DEPTH(0in, 2in, 1/4in)', 'driver depth is 0 in'],
    ['RING.DEPTH(2in, 2in, -1/4in)', 'clearance is -1/4 in'],
    ['RING.DEPTH(2in, 2in, 1/4in, 95deg)', 'tilt is 95 deg'],
    ['SHIM.HEIGHT(0in, 15deg)', 'size is 0 in'],
    ['DRIVER.REACH(2in, -1in, 15deg)', 'magnet is -1 in'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });

  test('a driver with room enough needs no ring', () => {
    expect(shown('RING.DEPTH(2in, 5in, 1/4in)')).toBe('0 in');
  });

  test('what lies in front of the base plane takes a deeper ring', () => {
    expect(shown('RING.DEPTH(2in, -1in, 1/4in)')).toBe('3 1/4 in');
  });
});
