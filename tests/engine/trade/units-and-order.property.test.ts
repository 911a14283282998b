import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { catalogue } from '../../../extension/engine/index.ts';
import { answered, baseOf } from '../../helpers/calculated.ts';

const trade = [...catalogue.values()].filter(({ group }) => group !== 'standard');

/** Other units for what an example is written in. */
const others: Readonly<Record<string, readonly string[]>> = {
  in: ['mm', 'ft', 'cm'],
  ft: ['in', 'm'],
  mm: ['in', 'cm'],
  sqin: ['sqft', 'cm2'],
  sqft: ['sqin', 'm2'],
  m2: ['sqft', 'cm2'],
  cuft: ['l', 'cuin'],
  qt: ['ml', 'floz'],
  pt: ['l', 'floz'],
  gal: ['l', 'qt'],
  floz: ['ml', 'cuin'],
  ml: ['floz', 'l'],
  l: ['cuft', 'ml'],
  g: ['oz', 'kg'],
  kg: ['lb', 'g'],
  lb: ['g', 'oz'],
  oz: ['g', 'lb'],
  min: ['h', 's'],
  h: ['min', 'day'],
  Hz: ['kHz'],
  kHz: ['Hz'],
  'g/cm3': ['lb/gal', 'kg/m3'],
  'g/m2': ['oz/sqyd', 'oz/sqft'],
  'oz/sqft': ['g/m2'],
  'oz/sqyd': ['g/m2'],
  'g/sqft': ['g/m2'],
  'floz/min': ['ml/min', 'l/h'],
};

const literal =
  /(?<![\w.])(\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?)( ?)([A-Za-z]+\d?(?:\/[A-Za-z]+\d?)?|%)(?![\w(])/g;

function numberIn(text: string): number {
  return text
    .split(' ')
    .map((part) => part.split('/').map(Number))
    .reduce((sum, [above = 0, below = 1]) => sum + above / below, 0);
}

function temperature(number: number, unit: string): string {
  return unit === 'degF'
    ? `${String((number - 32) / 1.8)} degC`
    : `${String(number * 1.8 + 32)} degF`;
}

/** The same amount in another unit; what has none stays as it is. */
function elsewhere(number: number, unit: string, pick: number): string {
  if (unit === 'degF' || unit === 'degC') return temperature(number, unit);
  if (unit === '%') return String(number / 100);
  const units = others[unit] ?? [];
  const other = units[pick % Math.max(1, units.length)];
  if (other === undefined) return `${String(number)} ${unit}`;
  return `${String((number * baseOf(`1 ${unit}`)) / baseOf(`1 ${other}`))} ${other}`;
}

/** The example with its amounts scaled, as it is written and in other units. */
function twice(formula: string, factors: readonly number[], pick: number): readonly string[] {
  let index = 0;
  const rewritten = (write: (number: number, unit: string) => string): string => {
    index = 0;
    return formula.slice(1).replaceAll(literal, (_, number: string, __, unit: string) => {
      const factor = unit.startsWith('deg') ? 1 : (factors[index++ % factors.length] ?? 1);
      return write(numberIn(number) * factor, unit);
    });
  };
  return [
    rewritten((number, unit) => `${String(number)} ${unit}`),
    rewritten((number, unit) => elsewhere(number, unit, pick)),
  ];
}

const withUnits = trade.filter(({ example }) => example.formula.search(literal) >= 0);

describe('units', () => {
  test('nearly every function of the trade is asked', () => {
    expect(withUnits.length).toBeGreaterThan(trade.length * 0.85);
  });

  test.each(withUnits.map(({ name, example }) => [name, example.formula] as const))(
    '%s gives the same answer for the same amounts in other units',
    (_, formula) => {
      const factor = fc.double({ min: 0.85, max: 1.2, noNaN: true });
      fc.assert(
        fc.property(
          fc.array(factor, { minLength: 1, maxLength: 5 }),
          fc.nat(5),
          (factors, pick) => {
            const [here = '', there = ''] = twice(formula, factors, pick);
            const [one, other] = [answered(here), answered(there)];
            // What is refused in one unit is refused in the other; the sentences name what was typed.
            if (typeof one === 'string') {
              expect(typeof other).toBe('string');
              return;
            }
            if (one.kind !== 'quantity') {
              expect(other).toMatchObject({ kind: one.kind });
              return;
            }
            expect(other).toMatchObject({ kind: 'quantity', dimension: one.dimension });
            if (typeof other === 'string' || other.kind !== 'quantity') return;
            const size = Math.max(1e-9, Math.abs(one.base));
            expect(Math.abs(other.base - one.base) / size).toBeLessThan(1e-9);
          },
        ),
        { numRuns: 25 },
      );
    },
  );
});

const inches = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const text = (number: number): string => number.toFixed(9);

describe('order', () => {
  test('leaning further never lowers a ring’s high side, and never raises its low side', () => {
    fc.assert(
      fc.property(
        inches(2, 6),
        inches(2, 10),
        inches(0, 25),
        inches(0, 20),
        (depth, size, tilt, more) => {
          const at = (side: string, lean: number): number | undefined => {
            const answer = answered(
              `RING.${side}(${text(depth)} in, ${text(size)} in, ${text(lean)} deg)`,
            );
            return typeof answer === 'string' || answer.kind !== 'quantity'
              ? undefined
              : answer.base;
          };
          const [high, higher] = [at('HIGH', tilt), at('HIGH', tilt + more)];
          const [low, lower] = [at('LOW', tilt), at('LOW', tilt + more)];
          if (high !== undefined && higher !== undefined)
            expect(higher).toBeGreaterThanOrEqual(high - 1e-9);
          if (low !== undefined && lower !== undefined)
            expect(lower).toBeLessThanOrEqual(low + 1e-9);
        },
      ),
      { numRuns: 100 },
    );
  });

  test('a deeper driver never takes a lower ring, and more room behind never a higher one', () => {
    const depth = (driver: number, behind: number): number =>
      baseOf(`RING.DEPTH(${text(driver)} in, ${text(behind)} in, 1/4in, 12deg, 3in)`);
    fc.assert(
      fc.property(inches(1, 5), inches(0, 4), inches(0, 2), (driver, behind, more) => {
        expect(depth(driver + more, behind)).toBeGreaterThanOrEqual(depth(driver, behind) - 1e-9);
        expect(depth(driver, behind + more)).toBeLessThanOrEqual(depth(driver, behind) + 1e-9);
        expect(depth(driver, behind)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 100 },
    );
  });

  test('warmer or more catalyst never gives a longer pot life', () => {
    const life = (percent: number, fahrenheit: number): number =>
      baseOf(`MIX.POTLIFE(${text(percent)}%, ${text(fahrenheit)} degF, 20min, 2%, 77degF)`);
    fc.assert(
      fc.property(inches(0.5, 3), inches(50, 95), inches(0, 10), (percent, heat, more) => {
        expect(life(percent, heat + more)).toBeLessThanOrEqual(life(percent, heat) + 1e-9);
        expect(life(percent + more / 10, heat)).toBeLessThanOrEqual(life(percent, heat) + 1e-9);
      }),
      { numRuns: 100 },
    );
  });

  test('packs for more are never fewer', () => {
    fc.assert(
      fc.property(inches(0, 40), inches(0, 20), inches(0.5, 8), (need, more, pack) => {
        const packs = (amount: number): number =>
          baseOf(`PACKS(${text(amount)} qt, ${text(pack)} qt)`);
        expect(packs(need + more)).toBeGreaterThanOrEqual(packs(need));
        expect(packs(need) * pack * 1.0101).toBeGreaterThanOrEqual(need - 1e-6);
      }),
      { numRuns: 100 },
    );
  });
});

describe('symmetry and inverses', () => {
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

describe('anything typed', () => {
  test.each(trade.map(({ name, parameters }) => [name, parameters.length] as const))(
    '%s answers or says why, and never with what is no number',
    (name, count) => {
      const words = [
        '0 in',
        '-3 in',
        '1e9 mm',
        '12 deg',
        '95 deg',
        '0.5',
        '0 %',
        '200 %',
        '3 qt',
        '9 lb',
        'circle(2in)',
        '70 degF',
        '4 USD',
        '20 min',
        '1e300 in',
        '1e-300 qt',
        '1e300 kHz',
        '-1e300',
        '',
        '1e12',
        '1e-9 g/cm3',
        'unit',
        'by_mass',
        '0 min',
        '(1in/0)',
      ];
      fc.assert(
        fc.property(
          fc.array(fc.constantFrom(...words), { minLength: count, maxLength: count }),
          (given) => {
            const answer = answered(`${name}(${given.join(', ')})`);
            if (typeof answer === 'string') expect(answer.length).toBeGreaterThan(10);
            else if (answer.kind === 'quantity') expect(Number.isFinite(answer.base)).toBe(true);
          },
        ),
        { numRuns: 60 },
      );
    },
  );
});
