import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { baseOf } from '../../helpers/calculated.ts';

const inches = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const text = (number: number): string => number.toFixed(9);
const builds = fc.constantFrom('round_baffle', 'round_tube', 'square_wall');

describe('rings', () => {
  test('low and high side lie as far below and above the wall over the centre, in every build', () => {
    fc.assert(
      fc.property(
        inches(2, 6),
        inches(2, 10),
        inches(0, 30),
        builds,
        (depth, size, tilt, build) => {
          const ring = `${text(depth)} in, ${text(size)} in, ${text(tilt)} deg, ${build}`;
          const middle = build === 'square_wall' ? depth / Math.cos((tilt * Math.PI) / 180) : depth;
          const sum = baseOf(`RING.LOW(${ring})`) + baseOf(`RING.HIGH(${ring})`);
          expect(sum / 25.4 / 2).toBeCloseTo(middle, 6);
        },
      ),
      { numRuns: 60 },
    );
  });

  test('flat on its base a ring is the same in every build', () => {
    fc.assert(
      fc.property(inches(1, 6), inches(2, 10), builds, (depth, size, build) => {
        for (const call of ['RING.WALL', 'RING.VOLUME', 'RING.HIGH', 'RING.LOW']) {
          const as = (how: string): number =>
            baseOf(`${call}(${text(depth)} in, ${text(size)} in, 0deg, ${how})`);
          expect(as(build) / as('round_baffle')).toBeCloseTo(1, 9);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('a circle, an oval of that width both ways and a rounded square with full corners are one ring', () => {
    fc.assert(
      fc.property(inches(2, 10), inches(0, 25), builds, (size, tilt, build) => {
        const d = `${text(size)} in`;
        const round = [d, `circle(${d})`, `oval(${d}, ${d})`, `roundrect(${d}, ${d}, ${d}/2)`];
        for (const call of ['STRIP', 'SHADOW', 'RADIUS']) {
          const [first = 0, ...rest] = round.map((shape) =>
            baseOf(`RING.${call}(${shape}, ${text(tilt)} deg, ${build})`),
          );
          for (const other of rest) expect(other / first).toBeCloseTo(1, 6);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('shims on either side of the low point are alike, and opposite ones share the rise', () => {
    fc.assert(
      fc.property(inches(2, 10), inches(1, 40), inches(0, 180), (size, tilt, station) => {
        const at = (degrees: number): number =>
          baseOf(`SHIM.HEIGHT(${text(size)} in, ${text(tilt)} deg, ${text(degrees)} deg)`);
        expect(at(360 - station)).toBeCloseTo(at(station), 6);
        expect(at(station) + at(180 - station)).toBeCloseTo(at(180), 6);
      }),
      { numRuns: 60 },
    );
  });
});

describe('router', () => {
  test('templates for the inside and the outside of a cut lie as far from it, and so do hole and disc', () => {
    fc.assert(
      fc.property(inches(3, 12), inches(0.6, 1.2), inches(0.1, 0.5), (size, bushing, bit) => {
        const template = (side: string): number =>
          baseOf(
            `BUSHING.TEMPLATE(${text(size)} in, ${text(bushing)} in, ${text(bit)} in, ${side})`,
          );
        const whole = 2 * size * 25.4;
        expect(template('inside') + template('outside')).toBeCloseTo(whole, 5);
        const jig = (side: string): number =>
          baseOf(`JIG.RADIUS(${text(size)} in, ${text(bit)} in, ${side})`);
        expect(jig('hole') + jig('disc')).toBeCloseTo(size * 25.4, 5);
      }),
      { numRuns: 60 },
    );
  });
});

describe('aim', () => {
  test('two ears aim alike whichever is told first', () => {
    fc.assert(
      fc.property(inches(1, 40), inches(1, 40), inches(5, 40), inches(5, 60), (x, y, near, far) => {
        const one = `${text(x)} in, ${text(y)} in, ${text(near)} in`;
        const other = `${text(y)} in, ${text(x)} in, ${text(far)} in`;
        for (const call of ['AIM.TILT', 'AIM.TURN'])
          expect(baseOf(`${call}(${one}, ${other})`)).toBeCloseTo(
            baseOf(`${call}(${other}, ${one})`),
            9,
          );
      }),
      { numRuns: 60 },
    );
  });

  test('an ear in front of the car turns as far the other way as one behind', () => {
    fc.assert(
      fc.property(inches(1, 40), inches(1, 40), inches(5, 40), (x, y, z) => {
        const turn = (rear: number): number =>
          baseOf(`AIM.TURN(${text(rear)} in, ${text(y)} in, ${text(z)} in)`);
        expect(turn(-x)).toBeCloseTo(-turn(x), 9);
      }),
      { numRuns: 60 },
    );
  });
});

describe('shapes', () => {
  test('an outline and its mirror image have the same area and way round', () => {
    const corner = inches(1, 10);
    fc.assert(
      fc.property(corner, corner, corner, corner, (a, b, c, d) => {
        const outline = (side: 1 | -1): string =>
          `polygon(0in, 0in, ${text(side * a)} in, 0in, ${text(side * (a + b))} in, ${text(c)} in, 0in, ${text(d)} in)`;
        for (const call of ['SHAPE.AREA', 'SHAPE.PERIMETER'])
          expect(baseOf(`${call}(${outline(-1)})`)).toBeCloseTo(
            baseOf(`${call}(${outline(1)})`),
            4,
          );
      }),
      { numRuns: 40 },
    );
  });

  test('grown and shrunk by as much, a part is as it was', () => {
    fc.assert(
      fc.property(inches(6, 20), inches(6, 20), inches(0.1, 1.5), (length, width, by) => {
        const part = `roundrect(${text(length)} in, ${text(width)} in, 2in)`;
        const back = `SHAPE.GROW(SHAPE.GROW(${part}, ${text(by)} in), -${text(by)} in)`;
        expect(baseOf(`SHAPE.AREA(${back})`) / baseOf(`SHAPE.AREA(${part})`)).toBeCloseTo(1, 6);
      }),
      { numRuns: 40 },
    );
  });
});

describe('mixes and money', () => {
  test('where resin and catalyst weigh alike, by mass and by volume are one', () => {
    fc.assert(
      fc.property(inches(0.1, 8), inches(0.5, 4), inches(0.8, 1.6), (quarts, percent, dense) => {
        const mix = (basis: string): number =>
          baseOf(
            `MIX.QUANTITY(${text(quarts)} qt, ${text(percent)}%, ${basis}, ${text(dense)}g/cm3, ${text(dense)}g/cm3)`,
          );
        expect(mix('by_mass') / mix('by_volume')).toBeCloseTo(1, 9);
      }),
      { numRuns: 60 },
    );
  });

  test('a job as likely to run over as under takes what is likely', () => {
    fc.assert(
      fc.property(inches(20, 90), inches(0, 20), (likely, by) => {
        const call = `TIME.THREEPOINT(${text(likely - by)} min, ${text(likely)} min, ${text(likely + by)} min)`;
        expect(baseOf(call)).toBeCloseTo(likely, 6);
      }),
      { numRuns: 60 },
    );
  });

  test('the first unit takes its own time in both models, and a learner of 100 % never gets quicker', () => {
    fc.assert(
      fc.property(
        inches(5, 90),
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom('unit', 'average'),
        (minutes, count, model) => {
          const first = `${text(minutes)} min`;
          expect(baseOf(`TIME.LEARN(${first}, 85%, 1, ${model})`)).toBeCloseTo(minutes, 6);
          expect(baseOf(`TIME.LEARN(${first}, 100%, ${String(count)}, ${model})`)).toBeCloseTo(
            minutes,
            6,
          );
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('inverses', () => {
  test('an ear to the left is as far off the axis as one to the right', () => {
    fc.assert(
      fc.property(inches(1, 40), inches(-30, 30), inches(5, 40), (rear, up, out) => {
        const angle = (side: number): number =>
          baseOf(
            `AIM.OFFAXIS(${text(side * rear)} in, ${text(up)} in, ${text(out)} in, 0deg, 0deg)`,
          );
        expect(angle(1)).toBeCloseTo(angle(-1), 9);
        const distance = (side: number): number =>
          baseOf(`AIM.DISTANCE(${text(side * rear)} in, ${text(up)} in, ${text(out)} in)`);
        expect(distance(1)).toBeCloseTo(distance(-1), 6);
      }),
      { numRuns: 100 },
    );
  });

  test('an oval laid the other way has the same area and way round', () => {
    fc.assert(
      fc.property(inches(2, 12), inches(2, 12), (length, width) => {
        for (const name of ['AREA', 'PERIMETER']) {
          const of = (one: number, other: number): number =>
            baseOf(`SHAPE.${name}(oval(${text(one)} in, ${text(other)} in))`);
          expect(of(length, width)).toBeCloseTo(of(width, length), 6);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('a bearing for an offset gives that offset, a price for a margin that margin', () => {
    fc.assert(
      fc.property(inches(1, 2), inches(0.05, 0.4), inches(1, 80), (cutter, offset, margin) => {
        const size = `BEARING.SIZE(${text(cutter)} in, ${text(offset)} in)`;
        expect(baseOf(`BEARING.OFFSET(${text(cutter)} in, ${size})`)).toBeCloseTo(offset * 25.4, 6);
        const price = baseOf(`PRICE.FROMMARGIN(100USD, ${text(margin)}%)`);
        expect((price - 100) / price).toBeCloseTo(margin / 100, 9);
        const markup = baseOf(`MARKUP.FROMMARGIN(${text(margin)}%)`);
        expect(100 * (1 + markup)).toBeCloseTo(price, 6);
      }),
      { numRuns: 100 },
    );
  });

  test('the least depth that keeps a low side keeps it, and a box for a Q has that Q', () => {
    fc.assert(
      fc.property(inches(3, 9), inches(0, 25), inches(0.2, 1.5), (size, tilt, low) => {
        const depth = `RING.LEAST(${text(size)} in, ${text(tilt)} deg, ${text(low)} in)`;
        const kept = baseOf(`RING.LOW(${depth}, ${text(size)} in, ${text(tilt)} deg)`);
        expect(kept).toBeCloseTo(low * 25.4, 5);
      }),
      { numRuns: 100 },
    );
    fc.assert(
      fc.property(inches(5, 60), inches(0.3, 0.6), inches(0.05, 0.5), (vas, qts, more) => {
        const volume = `BOX.VOLUME(${text(vas)} l, ${text(qts)}, ${text(qts + more)})`;
        expect(baseOf(`BOX.QTC(${text(vas)} l, ${text(qts)}, ${volume})`)).toBeCloseTo(
          qts + more,
          6,
        );
      }),
      { numRuns: 100 },
    );
  });
});
