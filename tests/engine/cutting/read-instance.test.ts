import { describe, expect, test } from 'vitest';
import { readInstance } from '../../../extension/engine/cutting/read-instance.ts';

const sheet = { id: 'sheet', length: 2440, width: 1220, price: 40 };
const base = { id: 'base', length: 600, width: 400, count: 2 };

function fault(instance: unknown): string {
  const read = readInstance(instance);
  return read.ok ? '' : read.problem.message;
}

describe('readInstance', () => {
  test('rectangles are read with what is left out filled in', () => {
    const read = readInstance({ kind: 'rectangles', stocks: [sheet], parts: [base] });
    expect(read).toMatchObject({
      ok: true,
      value: { kind: 'rectangles', kerf: 0, trim: 0, method: 'guillotine', seed: 1 },
    });
  });

  test('an outline says how large it is', () => {
    const points = [
      [0, 0],
      [300, 0],
      [300, 120],
    ];
    const read = readInstance({
      kind: 'outlines',
      stocks: [sheet],
      parts: [{ id: 'wedge', points, rotations: [0, 15] }],
    });
    expect(read.ok && 'parts' in read.value && read.value.parts[0]).toMatchObject({
      length: 300,
      width: 120,
      count: 1,
    });
  });

  test.each([
    ['[]', [], 'The instance is not a JSON object such as {"kind":"rectangles", …}.'],
    [
      'no kind',
      { kind: 'circles' },
      'kind is "circles"; it is rectangles, outlines, strips, bolt or packs.',
    ],
    [
      'no stock',
      { kind: 'strips', stocks: [], parts: [] },
      'stocks is []; it must be a list with at least one entry.',
    ],
    [
      'no size',
      { kind: 'rectangles', stocks: [sheet], parts: [{ id: 'base', width: 3 }] },
      'part base: length is missing; it must be a number of 0.01 or more.',
    ],
    [
      'a turn of a rectangle',
      { kind: 'rectangles', stocks: [sheet], parts: [{ ...base, rotations: [45] }] },
      'part base: rotations is [45]; turns of rectangles are 0, 90, 180 and 270.',
    ],
    [
      'one id twice',
      { kind: 'rectangles', stocks: [sheet], parts: [base, base] },
      'Two parts have the id base; ids must differ.',
    ],
    [
      'a negative kerf',
      { kind: 'rectangles', stocks: [sheet], parts: [base], kerf: -1 },
      'kerf is -1; it must be a number of 0 or more.',
    ],
    [
      'a held part without a place',
      { kind: 'rectangles', stocks: [sheet], parts: [base], fixed: [{ part: 'base', stock: 's' }] },
      'fixed 1: x is missing; it must be a number of 0 or more.',
    ],
    [
      'packs without a price',
      { kind: 'packs', need: 4, packs: [{ id: 'qt', size: 1 }] },
      'pack qt: price is missing; it must be a number of 0 or more.',
    ],
    [
      'a minimum in parts of a cent',
      { kind: 'packs', need: 4, packs: [{ id: 'qt', size: 1, price: 2.5 }], minimum: 9.12345 },
      'minimum is 9.12345, but not all prices and it are amounts of money with up to three decimals: round them.',
    ],
  ])('%s gets a sentence', (_, instance, sentence) => {
    expect(fault(instance)).toBe(sentence);
  });
});
