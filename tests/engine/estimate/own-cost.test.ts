import { describe, expect, test } from 'vitest';
import { readMaterial } from '../../../extension/engine/estimate/material.ts';
import { ownLine, readOwnCost } from '../../../extension/engine/estimate/own-cost.ts';
import { fakeBook, fakeRow, inches, type FakeRow } from '../../helpers/fake-answers.ts';

const panel = fakeRow('panel', { id: 'door', hands: 'pair' });
const vinyl = readMaterial(
  fakeRow('material', { id: 'vinyl', form: 'roll', width: '50 in' }),
  { packs: [], prices: [] },
  inches,
);

function costOf(cells: FakeRow, material?: typeof vinyl) {
  const row = fakeRow('part', { id: 'row', name: 'Row', kind: 'amount', ...cells });
  const kind = fakeBook.kinds.get(row.kind);
  if (kind === undefined) throw new Error('the kind is known');
  return readOwnCost({ row, kind, panel, material, settings: inches });
}

function fault(cells: FakeRow, material?: typeof vinyl) {
  const cost = costOf(cells, material);
  return cost.ok ? '' : cost.problem.code;
}

describe('readOwnCost', () => {
  test('money is for each piece of each panel', () => {
    const cost = costOf({ price: '4.25 USD', qty: '3' });
    expect(cost.ok && cost.value.cost).toBe(2550);
    expect(cost.ok && cost.value.need.base).toBe(6);
  });

  test('money for a unit is for what is used', () => {
    const cost = costOf({ price: '12 USD/qt', use: '0.5 qt' });
    expect(cost.ok && cost.value.cost).toBe(1200);
  });

  test('money a yard of a material goes by what its blanks take', () => {
    const blank = { kind: 'vinyl', length: '36 in', width: '25 in' };
    const cost = costOf({ ...blank, price: '20 USD/yd' }, vinyl);
    expect(cost.ok && cost.value.cost).toBe(2000);
    expect(cost.ok && cost.value.material).toBe('vinyl');
  });

  test('what cannot be priced says why', () => {
    expect(fault({ price: '?' })).toBe('need-unanswered');
    expect(fault({ price: '-4 USD' })).toBe('need-negative');
    expect(fault({ price: '4 USD', qty: '-1' })).toBe('need-negative');
    expect(fault({ price: '4 USD', qty: '?' })).toBe('need-unanswered');
    expect(fault({ price: '4 USD/qt', use: '3 in' })).toBe('price-unfitting');
    expect(fault({ price: '4 USD/qt' })).toBe('price-unfitting');
    expect(fault({ price: '4 in', use: '3 in' })).toBe('price-unfitting');
    expect(fault({ price: '4 USD/h', use: '3 in' })).toBe('price-unfitting');
  });
});

describe('ownLine', () => {
  test('is a line of its own that its row bears alone', () => {
    const cost = costOf({ price: '4.25 USD' });
    if (!cost.ok) throw new Error('it has a price');
    const line = ownLine(cost.value);
    expect([line.id, line.name, line.buy, line.charge, line.complete]).toEqual([
      'part/row',
      'Row',
      850,
      850,
      true,
    ]);
    expect(line.rows.map(({ row, buy }) => [row, buy])).toEqual([['row', 850]]);
    expect(line.steps[0]?.text).toBe('its own price 4.25 USD × 1 × 2 panels = 8.50 USD');
  });
});
