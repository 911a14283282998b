import { describe, expect, test } from 'vitest';
import { measureHeld, offerOf, readPack } from '../../../extension/engine/estimate/pack.ts';
import { fakeRow, inches, type FakeRow } from '../../helpers/fake-answers.ts';

const gallon = 231 * 25.4 ** 3;
const resin = {
  name: 'Resin',
  measure: 'volume',
  unit: 'qt',
  properties: { density: 0.0011 },
  settings: inches,
} as const;
const cloth = {
  name: 'Cloth',
  measure: 'length',
  unit: 'yd',
  properties: { width: 1000 },
  settings: inches,
} as const;
const board = {
  name: 'Board',
  measure: 'area',
  unit: 'sqft',
  properties: { length: 2438.4, width: 1219.2 },
  settings: inches,
} as const;

function pack(cells: FakeRow) {
  return fakeRow('pack', { id: 'pack', material: 'it', ...cells });
}

function faultOf(cells: FakeRow, context: Parameters<typeof readPack>[1] = resin) {
  return readPack(pack(cells), context).problem?.message;
}

describe('offerOf', () => {
  test('is the pack with its limits, worth what comes out of it', () => {
    const cells = { holds: '1 qt', price: '24 USD', from: '4', price_from: '21 USD' };
    const { pack: read } = readPack(pack({ ...cells, least: '2 qt' }), resin);
    expect(read && offerOf(read, 7)).toEqual({
      id: 'pack',
      holds: 7,
      price: 2400,
      least: 2,
      breaks: [{ from: 4, price: 2100 }],
    });
  });
});

describe('measureHeld', () => {
  test('is what the pack says it holds, or its step', () => {
    expect(measureHeld(pack({ holds: '1 qt' }))).toBe('volume');
    expect(measureHeld(pack({ step: '0.25 yd' }))).toBe('length');
    expect(measureHeld(pack({}))).toBeUndefined();
  });
});

describe('readPack', () => {
  test('a quart for 24 dollars', () => {
    const { pack: read } = readPack(pack({ holds: '1 qt', price: '24.00 USD' }), resin);
    expect(read?.holds).toBeCloseTo(gallon / 4, 6);
    expect(read).toMatchObject({ price: 2400, shown: { unit: 'qt' } });
  });

  test('a quart for 24 dollars is 21 dollars from four on', () => {
    const cells = { holds: '1 qt', price: '24 USD', from: '4', price_from: '21 USD' };
    expect(readPack(pack(cells), resin).pack?.breaks).toEqual([{ from: 4, price: 2100 }]);
  });

  test.each([
    [{ price_from: '21 USD' }, /is a lower price: say in from/],
    [{ from: '4' }, /is blank, but from is not/],
    [{ from: '4', price_from: '25 USD' }, /is higher than the price of a single pack/],
    [{ from: '0', price_from: '21 USD' }, /less than one pack/],
    [{ from: '4', price_from: '21 lb' }, /is not money/],
    [{ from: '4', price_from: '?' }, /has no answer/],
  ])('a lower price that cannot be used is told: %o', (cells, fault) => {
    expect(faultOf({ holds: '1 qt', price: '24 USD', ...cells })).toMatch(fault);
  });

  test('resin sold by the kilogram holds what its density says', () => {
    const { pack: read } = readPack(pack({ holds: '1.1 kg', price: '9 USD' }), resin);
    expect(read?.holds).toBeCloseTo(1e6, 3);
    expect(read?.shown.unit).toBe('kg');
  });

  test('a sheet is as large as its material says, a half sheet as it says itself', () => {
    const whole = readPack(pack({ holds: '1 sheet', price: '24 USD' }), board).pack;
    expect(whole?.holds).toBeCloseTo(2438.4 * 1219.2, 6);
    const half = readPack(pack({ holds: '16 sqft', price: '14 USD' }), board).pack;
    expect(half?.stock?.length).toBeCloseTo(1219.2, 6);
    const own = { holds: '1 sheet', length: '48 in', width: '24 in', price: '13 USD' };
    const { stock } = readPack(pack(own), board).pack ?? {};
    expect(stock?.length).toBeCloseTo(1219.2, 6);
    expect(stock?.width).toBeCloseTo(609.6, 6);
  });

  test('cloth by the quarter yard has a rate and no rounded price for the step', () => {
    const { pack: read } = readPack(pack({ step: '0.25 yd', rate: '9.50 USD/yd' }), cloth);
    expect(read?.step?.rate).toBeCloseTo(950 / 914.4, 9);
    expect(read?.step?.least).toBe(0);
    expect(read?.holds).toBeCloseTo(228.6, 9);
  });

  test('cloth priced by the square metre and cut by the metre', () => {
    const { pack: read } = readPack(pack({ step: '1 m', rate: '10 USD/m2' }), cloth);
    expect(read?.price).toBe(1000);
  });

  test('the least sold is kept', () => {
    const cells = { step: '0.25 yd', rate: '9.50 USD/yd', least: '1 yd' };
    expect(readPack(pack(cells), cloth).pack?.step?.least).toBeCloseTo(914.4, 9);
  });

  test('what cannot be read says why', () => {
    expect(faultOf({ holds: '1 qt' })).toBe('Pack pack of Resin: price is blank.');
    expect(faultOf({ holds: '1 qt', price: '?' })).toBe('Pack pack of Resin: price has no answer.');
    expect(faultOf({ holds: '1 qt', price: '3 in' })).toBe(
      'Pack pack of Resin: price is not money.',
    );
    expect(faultOf({ holds: '1 qt', price: '-3 USD' })).toBe(
      'Pack pack of Resin: price is negative.',
    );
    expect(faultOf({ price: '3 USD' })).toBe('Pack pack of Resin: holds is blank.');
    expect(faultOf({ holds: '?', price: '3 USD' })).toBe(
      'Pack pack of Resin: holds has no answer.',
    );
    expect(faultOf({ holds: '0 qt', price: '3 USD' })).toBe(
      'Pack pack of Resin: holds must be more than nothing.',
    );
    expect(faultOf({ holds: '3 min', price: '3 USD' })).toBe(
      'Pack pack of Resin: holds is not an amount that can be bought by the quart.',
    );
    expect(faultOf({ holds: '1 kg', price: '3 USD' }, { ...resin, properties: {} })).toBe(
      'Pack pack of Resin: holds cannot be turned into an amount by the quart: the material has no density.',
    );
    expect(faultOf({ step: '1 qt', rate: '3 USD' })).toBe(
      'Pack pack of Resin: rate is for a unit that does not fit how it is sold.',
    );
    expect(faultOf({ step: '1 qt', rate: '3 qt' })).toBe(
      'Pack pack of Resin: rate is not money for a unit.',
    );
    expect(faultOf({ step: '1 qt', rate: '-3 USD/qt' })).toBe(
      'Pack pack of Resin: rate is negative.',
    );
    expect(faultOf({ step: '1 qt', rate: '?' })).toBe('Pack pack of Resin: rate has no answer.');
  });
});
