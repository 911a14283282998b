import { expect, test } from 'vitest';
import { readMaterial } from '../../../extension/engine/estimate/material.ts';
import type { Asked } from '../../../extension/engine/estimate/need.ts';
import { sharedRows } from '../../../extension/engine/estimate/row-shares.ts';
import { area } from '../../../extension/engine/units/dimension.ts';
import { fakeRow, inches } from '../../helpers/fake-answers.ts';

const board = readMaterial(
  fakeRow('material', { id: 'board', form: 'sheet' }),
  { packs: [], prices: [], useStock: false },
  inches,
);

function asked(row: string, base: number): Asked {
  const amount = { base, dimension: area, unit: 'sqft', count: false };
  return {
    ...{ table: 'part', row, occurrence: 0, draw: '', material: 'board', group: 'structure' },
    ...{ use: amount, pieces: 1, panels: 1, waste: 0, need: amount, steps: [{ text: row }] },
  };
}

test('rows bear whole cents by what they need, and together all of it', () => {
  const rows = sharedRows(board, [asked('lid', 1), asked('base', 2)], { charge: 100, buy: 200 });
  expect(rows.map(({ charge, buy }) => [charge, buy])).toEqual([
    [33, 67],
    [67, 133],
  ]);
  expect(rows.map(({ steps }) => steps[0]?.text)).toEqual(['lid', 'base']);
});

test('a row that bears the same again is the same object, one that bears other money is not', () => {
  const [lid, base, ring] = [asked('lid', 1), asked('base', 1), asked('ring', 2)];
  const before = sharedRows(board, [lid, base, ring], { charge: 400, buy: 400 });
  const same = sharedRows(board, [lid, base, asked('ring', 2)], { charge: 400, buy: 400 });
  expect([same[0], same[1]]).toEqual([before[0], before[1]]);
  expect(same[0]).toBe(before[0]);
  expect(same[2]).not.toBe(before[2]);
  const dearer = sharedRows(board, [lid, base, ring], { charge: 800, buy: 400 });
  expect(dearer.map(({ charge }) => charge)).toEqual([200, 200, 400]);
});
