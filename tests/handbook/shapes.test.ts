import { describe, expect, test } from 'vitest';
import { literal, numberOf, shown } from '../helpers/calculated.ts';

/** Simpson's rule over a whole turn; on a smooth periodic curve it converges faster than any power. */
function overTurn(curve: (angle: number) => number): number {
  const steps = 4096;
  let sum = 0;
  for (let step = 0; step < steps; step++) sum += curve((2 * Math.PI * step) / steps);
  return (sum * 2 * Math.PI) / steps;
}

describe('ellipses, by numerical integration of the arc (geometry)', () => {
  test.each([
    [9, 6],
    [7, 6.761480784023478],
    [6, 9],
    [24, 15],
    [10, 2],
    [8, 8],
  ])('the outline of an oval of %d × %d in agrees to 1e-10', (length, width) => {
    const arc = overTurn((angle) =>
      Math.hypot((length / 2) * Math.sin(angle), (width / 2) * Math.cos(angle)),
    );
    const worked = numberOf(
      `SHAPE.PERIMETER(oval(${literal(length)} in, ${literal(width)} in))`,
      'in',
    );
    expect(Math.abs(worked / arc - 1)).toBeLessThan(1e-10);
  });

  test('so flat an oval that it is nearly two lines is still right: 2 × 10 in and a little', () => {
    const arc = numberOf('SHAPE.PERIMETER(oval(10in, 0.001in))', 'in');
    expect(arc).toBeGreaterThan(20);
    expect(arc).toBeLessThan(20.00001);
  });

  test('the area inside an oval of 9 × 6 in is the integral of its strips', () => {
    const strips = overTurn((angle) => 4.5 * 3 * Math.sin(angle) ** 2);
    expect(numberOf('SHAPE.AREA(oval(9in, 6in))', 'sqin')).toBeCloseTo(strips, 9);
  });
});

describe('plain shapes (geometry)', () => {
  test('a circle is π times as long round as it is wide, and π/4 of its square inside', () => {
    expect(numberOf('SHAPE.PERIMETER(circle(7in))', 'in')).toBeCloseTo(21.9911, 4);
    expect(numberOf('SHAPE.AREA(circle(7in))', 'sqin')).toBeCloseTo((Math.PI * 49) / 4, 10);
  });

  test('a 26 × 15 in panel with 2 in corners: 386.566 sqin, 78.566 in round', () => {
    const panel = 'roundrect(26in, 15in, 2in)';
    const corner = (4 - Math.PI) * 4;
    expect(numberOf(`SHAPE.AREA(${panel})`, 'sqin')).toBeCloseTo(390 - corner, 9);
    expect(numberOf(`SHAPE.AREA(${panel})`, 'sqin')).toBeCloseTo(386.566, 3);
    expect(numberOf(`SHAPE.PERIMETER(${panel})`, 'in')).toBeCloseTo(82 - 16 + 4 * Math.PI, 9);
  });

  test('a 4 × 8 ft sheet is 32 sqft, 24 ft round', () => {
    expect(numberOf('SHAPE.AREA(rect(8ft, 4ft))', 'sqft')).toBeCloseTo(32, 12);
    expect(numberOf('SHAPE.PERIMETER(rect(8ft, 4ft))', 'ft')).toBeCloseTo(24, 12);
  });

  test('a nominal 6 × 9 cut-out is longer than 8.66 and wider than 5.87 in (autovly.com, weak)', () => {
    const cutout = 'oval(8.67in, 5.9in)';
    expect(numberOf(`SHAPE.LENGTH(${cutout})`, 'in')).toBeCloseTo(8.67, 12);
    expect(numberOf(`SHAPE.WIDTH(${cutout})`, 'in')).toBeCloseTo(5.9, 12);
    expect(numberOf(`SHAPE.LENGTH(${cutout})`, 'in')).toBeLessThan(9);
    expect(numberOf(`SHAPE.WIDTH(${cutout})`, 'in')).toBeLessThan(6);
  });

  test('a template is cut 1/8 in smaller for vinyl, 3/8 in for carpet (carstereo.com, panels)', () => {
    const panel = 'roundrect(26in, 15in, 2in)';
    expect(shown(`SHAPE.GROW(${panel}, -1/8in)`)).toBe('roundrect(25 3/4 in, 14 3/4 in, 1 7/8 in)');
    expect(shown(`SHAPE.GROW(${panel}, -3/8in)`)).toBe('roundrect(25 1/4 in, 14 1/4 in, 1 5/8 in)');
  });

  test('a part grown by 1 in is longer round by a full turn of 1 in (Steiner’s formula)', () => {
    const before = numberOf('SHAPE.PERIMETER(rect(24in, 16in))', 'in');
    const after = numberOf('SHAPE.PERIMETER(SHAPE.GROW(rect(24in, 16in), 1in))', 'in');
    expect(after - before).toBeCloseTo(2 * Math.PI, 10);
  });
});

describe('rings of another shape, and what a ring hides (geometry)', () => {
  test('a round tube hides its circle, a leaning round lip an ellipse of it', () => {
    const circle = (Math.PI * 7 ** 2) / 4;
    const lean = Math.cos(Math.PI / 12);
    expect(numberOf('RING.SHADOW(7in, 15deg, round_tube)', 'sqin')).toBeCloseTo(circle, 9);
    expect(numberOf('RING.SHADOW(7in, 15deg)', 'sqin')).toBeCloseTo(circle * lean, 9);
  });

  test('the tightest bend under a 7 in lip leaning 15° is b²/a of its ellipse, by the turning of its tangent', () => {
    const [a, b] = [3.5, 3.5 * Math.cos(Math.PI / 12)];
    const step = 1e-4;
    const direction = (t: number) => Math.atan2(b * Math.cos(t), -a * Math.sin(t));
    const arc = Math.hypot(a * Math.sin(0), b * Math.cos(0)) * 2 * step;
    const turned = direction(step) - direction(-step);
    const radius = numberOf('RING.RADIUS(7in, 15deg)', 'in');
    expect(radius).toBeCloseTo((b * b) / a, 12);
    expect(radius).toBeCloseTo(arc / turned, 6);
  });

  test('a circle in place of a size is the same ring', () => {
    expect(numberOf('RING.WALL(2in, circle(7in), 15deg)', 'sqin')).toBe(
      numberOf('RING.WALL(2in, 7in, 15deg)', 'sqin'),
    );
  });

  test('the wall of an oval tube cut on the slope is the integral of its heights', () => {
    const [long, wide, lean] = [4.5, 3, Math.tan(Math.PI / 12)];
    const wall = overTurn(
      (t) => (2 + long * Math.cos(t) * lean) * Math.hypot(long * Math.sin(t), wide * Math.cos(t)),
    );
    const call = 'RING.WALL(2in, oval(9in, 6in), 15deg, round_tube)';
    expect(numberOf(call, 'sqin')).toBeCloseTo(wall, 8);
  });
});
