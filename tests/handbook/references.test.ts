import { describe, expect, test } from 'vitest';
import { literal, numberOf } from '../helpers/calculated.ts';

/*
 * The same figures reached another way: series, sums, integrals and corners counted one by one. Only
 * definitions and geometry are used here; none of it shares a line with the functions.
 */
const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** J1 by its power series. */
function besselSeries(x: number): number {
  let [term, sum] = [x / 2, x / 2];
  for (let k = 1; k < 60; k++) {
    term *= -((x / 2) ** 2) / (k * (k + 1));
    sum += term;
  }
  return sum;
}

describe('a flat piston by the power series of J1 (definition)', () => {
  test.each([
    [130, 500, 60],
    [130, 2000, 30],
    [130, 4000, 50],
    [165, 3000, 20],
    [25, 12000, 45],
    [100, 1000, 5],
  ])('%d mm at %d Hz, %d° off the axis', (cone, hertz, degrees) => {
    const x = Math.PI * (cone / (343200 / hertz)) * Math.sin(radians(degrees));
    const level = 20 * Math.log10(Math.abs((2 * besselSeries(x)) / x));
    const call = `DRIVER.OFFAXISLOSS(${literal(cone)}mm, ${literal(hertz)}Hz, ${literal(degrees)}deg)`;
    expect(numberOf(call)).toBeCloseTo(level, 8);
  });
});

describe('a closed box by its transfer function (definition of 3 dB down: half the power)', () => {
  test.each([
    [35, 45, 0.65, 30],
    [60, 12, 0.4, 8],
    [80, 6, 0.9, 20],
  ])('Fs %d Hz, Vas %d l, Qts %d in %d l', (fs, vas, qts, volume) => {
    const box = `${literal(vas)}l, ${literal(qts)}, ${literal(volume)}l`;
    const at = numberOf(`BOX.F3(${literal(fs)}Hz, ${box})`, 'Hz');
    const stiffer = Math.sqrt(1 + vas / volume);
    const [u, q] = [at / (fs * stiffer), qts * stiffer];
    const power = u ** 4 / ((u * u - 1) ** 2 + (u / q) ** 2);
    expect(power).toBeCloseTo(0.5, 10);
  });
});

describe('learning, one unit after the other (definition)', () => {
  test.each([70, 80, 85, 92.5])('at %d %% each doubling takes that share of the time', (rate) => {
    const unit = (count: number): number =>
      numberOf(`TIME.LEARN(60min, ${literal(rate)}%, ${literal(count)}, unit)`, 'min');
    for (const count of [1, 3, 7, 50]) {
      expect(unit(2 * count) / unit(count)).toBeCloseTo(rate / 100, 12);
    }
  });

  test.each(['unit', 'average'])('the units of the model %s add up to its total', (model) => {
    const sum = Array.from({ length: 24 }, (_, index) =>
      numberOf(`TIME.LEARN(60min, 85%, ${literal(index + 1)}, ${model})`, 'min'),
    ).reduce((total, minutes) => total + minutes, 0);
    expect(numberOf(`TIME.LEARNTOTAL(60min, 85%, 24, ${model})`, 'min')).toBeCloseTo(sum, 8);
  });

  test('by average the mean of twice as many is the rate of the mean', () => {
    const mean = (count: number): number =>
      numberOf(`TIME.LEARNTOTAL(60min, 85%, ${literal(count)}, average)`, 'min') / count;
    expect(mean(16) / mean(8)).toBeCloseTo(0.85, 12);
  });
});

/** Sum over the small columns that stand on a disc; `height` of a place on it, sizes in inches. */
function columns(size: number, height: (x: number) => number): number {
  const [rings, turns] = [400, 400];
  let sum = 0;
  for (let ring = 0; ring < rings; ring++) {
    const radius = ((ring + 0.5) / rings) * (size / 2);
    for (let turn = 0; turn < turns; turn++) {
      const angle = (2 * Math.PI * turn) / turns;
      sum += height(radius * Math.cos(angle)) * radius;
    }
  }
  return sum * (size / 2 / rings) * ((2 * Math.PI) / turns);
}

describe('rings by columns and by stations (geometry)', () => {
  test('the air of a tube cut on the slope is the sum of its columns', () => {
    const air = columns(7, (x) => 2 + x * Math.tan(radians(15)));
    expect(numberOf('RING.VOLUME(2in, 7in, 15deg, round_tube)', 'cuin')).toBeCloseTo(air, 3);
  });

  test('under a round lip each column stands on a base that is narrower by cos 15°', () => {
    const lean = Math.cos(radians(15));
    const air = columns(7, (x) => 2 + x * Math.sin(radians(15))) * lean;
    expect(numberOf('RING.VOLUME(2in, 7in, 15deg)', 'cuin')).toBeCloseTo(air, 3);
  });

  test('a wall square to the lip is a tube whose columns lean with it', () => {
    const [lean, rise] = [Math.cos(radians(15)), Math.tan(radians(15))];
    const air = columns(7, (x) => 2 / lean + x * rise);
    expect(numberOf('RING.VOLUME(2in, 7in, 15deg, square_wall)', 'cuin')).toBeCloseTo(air, 3);
    expect(numberOf('RING.HIGH(2in, 7in, 15deg, square_wall)', 'in')).toBeCloseTo(
      2 / lean + 3.5 * rise,
      12,
    );
  });

  test.each([0, 37, 90, 140, 180])('a shim at %d° is the height of a leaning plane there', (at) => {
    const along = 3.75 * (1 - Math.cos(radians(at)));
    const call = `SHIM.HEIGHT(7 1/2in, 15deg, ${literal(at)}deg)`;
    expect(numberOf(call, 'in')).toBeCloseTo(along * Math.sin(radians(15)), 12);
  });
});

describe('a driver turned point by point (geometry)', () => {
  /** Corners of magnet and motor behind a seat that leans: how far back and how far sideways. */
  function corners(depth: number, magnet: number, tilt: number): readonly (readonly number[])[] {
    const [cos, sin] = [Math.cos(radians(tilt)), Math.sin(radians(tilt))];
    return [-1, 1].map((side) => {
      const half = (side * magnet) / 2;
      return [depth * cos + half * sin, Math.abs(depth * sin - half * cos)];
    });
  }

  test.each([
    [2.75, 3.5, 15, 2],
    [2.5, 4, 0, 1.5],
    [1.75, 2.5, 30, 2.25],
  ])('%d in deep, magnet %d in, %d°: seat at %d in', (depth, magnet, tilt, seat) => {
    const points = corners(depth, magnet, tilt);
    const back = Math.max(...points.map(([away = 0]) => away));
    const side = Math.max(...points.map(([, aside = 0]) => aside));
    const driver = `${literal(depth)}in, ${literal(magnet)}in, ${literal(tilt)}deg`;
    const room = numberOf(`DRIVER.CLEARANCE(${literal(seat)}in, ${driver}, 3in)`, 'in');
    expect(room).toBeCloseTo(3 + seat - back, 12);
    expect(numberOf(`DRIVER.REACH(${driver})`, 'in')).toBeCloseTo(side, 12);
    const least = numberOf(
      `RING.DEPTH(${literal(depth)}in, 1in, 1/4in, ${literal(tilt)}deg, ${literal(magnet)}in)`,
      'in',
    );
    expect(least).toBeCloseTo(Math.max(0, back + 0.25 - 1), 12);
  });
});

describe('aim by vectors (geometry)', () => {
  const [near, far] = ['30in, 28in, 24in', '28in, 27in, 48in'];

  test('leaning by tilt and turn points straight at the ear', () => {
    const tilt = `AIM.TILT(${near})`;
    const turn = `AIM.TURN(${near})`;
    expect(numberOf(`AIM.OFFAXIS(${near}, ${tilt}, ${turn})`, 'deg')).toBeLessThan(1e-5);
    const [a, b] = [radians(numberOf(tilt, 'deg')), radians(numberOf(turn, 'deg'))];
    const long = Math.hypot(30, 28, 24);
    expect(long * Math.sin(a) * Math.sin(b)).toBeCloseTo(30, 10);
    expect(long * Math.sin(a) * Math.cos(b)).toBeCloseTo(28, 10);
    expect(long * Math.cos(a)).toBeCloseTo(24, 10);
  });

  test('between two ears both are equally far off the axis, and half of what lies between them', () => {
    const axis = `AIM.TILT(${near}, ${far}), AIM.TURN(${near}, ${far})`;
    const [one, other] = [near, far].map((ear) =>
      numberOf(`AIM.OFFAXIS(${ear}, ${axis})`, 'deg'),
    ) as [number, number];
    expect(one).toBeCloseTo(other, 9);
    const between = Math.acos(
      (30 * 28 + 28 * 27 + 24 * 48) / (Math.hypot(30, 28, 24) * Math.hypot(28, 27, 48)),
    );
    expect(radians(one + other)).toBeCloseTo(between, 9);
  });
});

describe('mixes weighed back (definition)', () => {
  test.each([
    ['by_mass', 0.02],
    ['ml_per_100g', 0.02 * 1.18],
    ['by_volume', (0.02 * 1.18) / 1.13],
  ])('2 %% %s of resin at 1.13 and catalyst at 1.18 is %d by mass', (basis, share) => {
    const catalyst = `MIX.QUANTITY(900g, 2%, ${basis}, 1.13g/cm3, 1.18g/cm3)`;
    expect(numberOf(`MIX.PERCENT(900g, ${catalyst}*1.18g/cm3)`)).toBeCloseTo(share, 12);
  });

  test('a laminate is as thick as the glass and the resin in it lie on an area', () => {
    const [glass, resin] = [450 / 2.56, (450 * (0.7 / 0.3)) / 1.2];
    const call = 'LAMINATE.THICKNESS(450g/m2, 30%, 2.56g/cm3, 1.2g/cm3)';
    expect(numberOf(call, 'mm')).toBeCloseTo((glass + resin) / 1000, 12);
  });
});
