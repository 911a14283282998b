import { describe, expect, test } from 'vitest';
import { htmlPage } from '../../extension/engine/index.ts';
import { literal, numberOf } from '../helpers/calculated.ts';
import { paperOf, wordsOf } from '../helpers/paper-of.ts';
import { jobWith, row } from '../helpers/priced-job.ts';

/** The outline of an ellipse of these half axes in inches. */
function ellipsePerimeter(long: number, short: number): number {
  return numberOf(`SHAPE.PERIMETER(oval(${literal(2 * long)} in, ${literal(2 * short)} in))`, 'in');
}

// Geometry worked by hand for a ring of 7 in that leans 15°, its low side 1 in high.
describe('a 7 in ring leaning 15° over a low side of 1 in', () => {
  const centre = (build: string) => numberOf(`RING.LEAST(7in, 15deg, 1in, ${build})`, 'in');

  test.each([
    ['round_tube', 1.8756],
    ['round_baffle', 1.8117],
  ])('a %s rises %d in', (build, rise) => {
    const depth = `${String(centre(build))} in`;
    const ring = `${depth}, 7in, 15deg, ${build}`;
    const worked = numberOf(`RING.HIGH(${ring})`, 'in') - numberOf(`RING.LOW(${ring})`, 'in');
    expect(Math.abs(worked - rise)).toBeLessThanOrEqual(0.0001);
  });

  test('the sloped cut of a tube is 1, 1.9378 and 2.8756 in high at low, middle and high side', () => {
    const depth = `${String(centre('round_tube'))} in`;
    expect(numberOf(`RING.LOW(${depth}, 7in, 15deg, round_tube)`, 'in')).toBeCloseTo(1, 9);
    expect(centre('round_tube')).toBeCloseTo(1.9378, 4);
    expect(numberOf(`RING.HIGH(${depth}, 7in, 15deg, round_tube)`, 'in')).toBeCloseTo(2.8756, 4);
  });

  test('its strip is 42.615 sqin, its air 74.576 cuin or 1.2221 l', () => {
    const ring = `${String(centre('round_tube'))} in, 7in, 15deg, round_tube`;
    expect(numberOf(`RING.WALL(${ring})`, 'sqin')).toBeCloseTo(42.615, 3);
    expect(numberOf(`RING.VOLUME(${ring})`, 'cuin')).toBeCloseTo(74.576, 2);
    expect(numberOf(`RING.VOLUME(${ring})`, 'l')).toBeCloseTo(1.2221, 4);
  });

  test('under a round baffle the wall is an ellipse of 7 × 6.7615 in, 21.6181 in round (Ramanujan)', () => {
    expect(numberOf('RING.STRIP(7in, 15deg)', 'in')).toBeCloseTo(21.6181, 4);
    expect(numberOf('RING.STRIP(7in, 15deg, round_tube)', 'in')).toBeCloseTo(21.9911, 4);
    const [a, b] = [3.5, 3.5 * Math.cos((15 * Math.PI) / 180)];
    const h = ((a - b) / (a + b)) ** 2;
    const ramanujan = Math.PI * (a + b) * (1 + (3 * h) / (10 + Math.sqrt(4 - 3 * h)));
    expect(ellipsePerimeter(a, b)).toBeCloseTo(ramanujan, 10);
    expect(2 * b).toBeCloseTo(6.7615, 4);
  });

  test('the two builds are not the same ring: one answer is wrong for the other', () => {
    expect(centre('round_tube')).not.toBeCloseTo(centre('round_baffle'), 2);
  });
});

describe('strip', () => {
  test('an 8 in ring of 1/8 in strip: 24.7400 in on its neutral axis', () => {
    const call = 'RING.STRIP(8in, 0deg, round_baffle, 1/8in)';
    expect(Math.abs(numberOf(call, 'in') - 24.74)).toBeLessThanOrEqual(0.0005);
  });

  test('inside and outside of a bent 1/8 in strip differ by 0.785 in', () => {
    const [outside, inside] = [8, 7.75].map((size) =>
      numberOf(`RING.STRIP(${String(size)}in)`, 'in'),
    ) as [number, number];
    expect(outside - inside).toBeCloseTo(0.785, 3);
  });
});

describe('a ring 7 1/2 in across at a centre depth of 2 in, leaning 15°', () => {
  test.each([
    ['round_tube', 0.99519, 3.00481, 23.56194, 47.1239],
    ['round_baffle', 1.02943, 2.97057, 23.16226, 46.3245],
    ['square_wall', 1.06574, 3.07536, 23.56194, 48.7862],
  ])('%s: low %d, high %d, strip %d, wall %d', (...row) => {
    const [build, low, high, strip, wall] = row;
    const ring = `2in, 7 1/2in, 15deg, ${build}`;
    expect(Math.abs(numberOf(`RING.LOW(${ring})`, 'in') - low)).toBeLessThan(1e-5);
    expect(Math.abs(numberOf(`RING.HIGH(${ring})`, 'in') - high)).toBeLessThan(1e-5);
    const outline = numberOf(`RING.STRIP(7 1/2in, 15deg, ${build})`, 'in');
    expect(Math.abs(outline - strip)).toBeLessThan(1e-5);
    expect(Math.abs(numberOf(`RING.WALL(${ring})`, 'sqin') - wall)).toBeLessThan(1e-4);
  });

  test('the sawn edge of a tube is an ellipse 23.97933 in round', () => {
    const long = 3.75 / Math.cos((15 * Math.PI) / 180);
    expect(Math.abs(ellipsePerimeter(long, 3.75) - 23.97933)).toBeLessThan(1e-5);
  });

  test('a tube of that depth cannot lean further than 28.072°', () => {
    const low = (tilt: number) =>
      numberOf(`RING.LOW(2in, 7 1/2in, ${String(tilt)}deg, round_tube)`, 'in');
    expect(low(28.071)).toBeGreaterThan(0);
    expect(low(28.073)).toBeLessThan(0);
  });

  test.each([
    ['0deg', 0],
    ['60deg', 0.4853],
    ['90deg', 0.9706],
    ['120deg', 1.4559],
    ['180deg', 1.9411],
  ])('a shim at %s from the low point is %d in high', (station, height) => {
    expect(numberOf(`SHIM.HEIGHT(7 1/2in, 15deg, ${station})`, 'in')).toBeCloseTo(height, 4);
  });
});

describe('room for a driver', () => {
  test('depth 2 3/4, magnet 3 1/2, 15°, seat at 2, track at 3: 1.89077 clear, corner 2.40212 out', () => {
    const clear = numberOf('DRIVER.CLEARANCE(2in, 2 3/4in, 3 1/2in, 15deg, 3in)', 'in');
    expect(Math.abs(clear - 1.89077)).toBeLessThan(1e-5);
    const reach = numberOf('DRIVER.REACH(2 3/4in, 3 1/2in, 15deg)', 'in');
    expect(Math.abs(reach - 2.40212)).toBeLessThan(1e-5);
  });

  test('depth 2 1/2, magnet 4, 15°, seat at 1.9378: the corner is 0.9946 behind the base plane', () => {
    const clear = numberOf('DRIVER.CLEARANCE(1.93782in, 2 1/2in, 4in, 15deg, 0in)', 'in');
    expect(-clear).toBeCloseTo(0.9946, 4);
  });

  test('with that much more behind it and no clearance kept, the driver takes just that seat', () => {
    const depth = numberOf('RING.DEPTH(2 1/2in, 0.99463in, 0in, 15deg, 4in)', 'in');
    expect(depth).toBeCloseTo(1.9378, 4);
  });
});

describe('left and right', () => {
  test('rings of a pair are mirror images: the strip stands flush with opposite faces (common practice, no source)', () => {
    const pair = jobWith(
      {},
      row('panel', 'door', { name: 'Door', hands: 'pair' }),
      row('part', 'base', { kind: 'base', panel: 'door', shape: 'rect(26 in, 15 in)' }),
      row('part', 'ring', {
        name: 'Ring',
        kind: 'ring',
        on: 'base',
        size: '7 in',
        tilt: '15 deg',
        turn: '45 deg',
      }),
    );
    const words = wordsOf(htmlPage(paperOf('shopsheet', pair)));
    // 45° from straight up towards the rear is half past ten on the left door, half past one on the right.
    expect(words).toContain('clock: left 10:30, right 1:30');
    expect(words).toContain('the right hand is the mirror of the left');
  });
});
