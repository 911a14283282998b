import { describe, expect, test } from 'vitest';
import type { BillLine } from '../../../extension/engine/estimate/bill.ts';
import { readMaterial } from '../../../extension/engine/estimate/material.ts';
import { boughtText, withMore } from '../../../extension/engine/estimate/raised-line.ts';
import { pricedJob, row } from '../../helpers/priced-job.ts';
import { fakeRow, inches } from '../../helpers/fake-answers.ts';

const gallon = { id: 'gallon', material: 'test_resin', holds: '1 gal', price: '69.99 USD' };
const quart = { id: 'quart', material: 'test_resin', holds: '1 qt', price: '24.99 USD' };

/** The line of 2.003 quarts of resin, bought in two quarts as a pinch is left out. */
function tightLine(): BillLine {
  const { bill } = pricedJob(
    row('material', 'test_resin', { name: 'Resin', form: 'liquid' }),
    row('pack', 'quart', { material: 'test_resin', holds: '1 qt', price: '24.99 USD' }),
    row('part', 'soak', {
      ...{ kind: 'consumable', material: 'test_resin', use: '2.003 qt', waste: '0' },
    }),
  );
  const line = bill.lines.find(({ id }) => id === 'test_resin');
  if (line === undefined) throw new Error('no line');
  return line;
}

const material = readMaterial(
  fakeRow('material', { id: 'test_resin', name: 'Resin', form: 'liquid' }),
  { packs: [fakeRow('pack', quart), fakeRow('pack', gallon)], prices: [] },
  inches,
);

describe('withMore', () => {
  const line = tightLine();
  const more = { packs: [{ id: 'gallon', count: 1 }], cost: 6999, material, supplier: 'Coast' };
  const raised = withMore(line, more, inches);

  test('a gallon instead of two quarts is bought, and no more is charged', () => {
    expect(line.tight).toBe('tight, 0.1 % short');
    expect(raised).toMatchObject({ buy: 6999, charge: line.charge });
    expect(raised.leftValue - line.leftValue).toBe(6999 - 4998);
    expect(raised.tight).toBeUndefined();
    expect(raised.rows.map(({ buy }) => buy)).toEqual([6999]);
  });

  test('the working says for whom', () => {
    const words = '1 × 1 gal of Resin for 69.99 USD';
    expect(raised.steps.at(-1)?.text).toBe(`for the minimum order of Coast: ${words}`);
    expect(raised.steps.slice(0, -1)).toEqual(line.steps);
  });
});

describe('boughtText', () => {
  test('names what is bought, not what is on the shelf', () => {
    const line = tightLine();
    const [pack] = line.packs;
    const shelf = pack === undefined ? [] : [{ ...pack, id: 'old', count: 1, shelf: true }];
    expect(boughtText({ ...line, packs: [...line.packs, ...shelf] }, inches)).toBe(
      '2 × 1 qt of Resin',
    );
  });
});
