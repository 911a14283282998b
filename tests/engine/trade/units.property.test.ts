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
  'g/min': ['kg/h', 'lb/min'],
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

/** Calls with what the examples leave out: optional arguments, builds and sides, shapes, amounts weighed. */
const fuller = [
  '=RING.LEAST(8in, 15deg, 5/8in, round_tube)',
  '=RING.LOW(2in, oval(9in, 6in), 15deg, square_wall)',
  '=RING.HIGH(2in, roundrect(9in, 6in, 2in), 15deg, round_tube)',
  '=RING.STRIP(oval(9in, 6in), 12deg, round_tube, 1/8in, 1in)',
  '=RING.WALL(3in, roundrect(9in, 6in, 2in), 12deg)',
  '=RING.SHADOW(oval(9in, 6in), 12deg, round_tube)',
  '=RING.RADIUS(roundrect(9in, 6in, 2in), 12deg, square_wall)',
  '=RING.VOLUME(3in, oval(9in, 6in), 12deg, square_wall)',
  '=RING.DEPTH(2 3/4in, 2in, 1/4in)',
  '=SHIM.HEIGHT(7 1/2in, 15deg, 70deg)',
  '=AIM.TILT(30in, 28in, 24in, 28in, 27in, 48in)',
  '=AIM.TURN(30in, 28in, 24in, 28in, 27in, 48in)',
  '=BUSHING.TEMPLATE(6in, 3/4in, 1/2in, outside)',
  '=JIG.RADIUS(13in, 1/2in, disc)',
  '=GRILLE.SIZE(8in, 1/16in, 1/32in, 1)',
  '=SHAPE.AREA(SHAPE.GROW(rect(24in, 16in), 1in, square))',
  '=RESIN.SOAK(4sqft, 2000g/m2, 2)',
  '=RESIN.VOLUME(3qt, 1.1g/cm3)',
  '=MIX.QUANTITY(900g, 2%, ml_per_100g, 1.1g/cm3, 1.12g/cm3)',
  '=MIX.QUANTITY(1qt, 2%, by_volume, 1.1g/cm3, 1.12g/cm3)',
  '=MIX.BATCHES(3kg, 500g, 60g/min, 12min)',
  '=TIME.LEARN(60min, 85%, 5, average)',
  '=TIME.LEARNTOTAL(60min, 85%, 5, unit)',
];

describe('units', () => {
  test('nearly every function of the trade is asked', () => {
    expect(withUnits.length).toBeGreaterThan(trade.length * 0.85);
  });

  test('the fuller calls answer as they stand', () => {
    const open = fuller.filter((formula) => typeof answered(formula.slice(1)) === 'string');
    expect(open).toEqual([]);
  });

  const calls = [...withUnits.map(({ example }) => example.formula), ...fuller];
  test.each(calls)('%s gives the same answer for the same amounts in other units', (formula) => {
    const factor = fc.double({ min: 0.85, max: 1.2, noNaN: true });
    fc.assert(
      fc.property(fc.array(factor, { minLength: 1, maxLength: 5 }), fc.nat(5), (factors, pick) => {
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
      }),
      { numRuns: 25 },
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
