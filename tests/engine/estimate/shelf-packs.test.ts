import { describe, expect, test } from 'vitest';
import { amountOf } from '../../../extension/engine/estimate/amount.ts';
import { packsApart } from '../../../extension/engine/estimate/shelf-packs.ts';

const pack = { count: 1, holds: amountOf(1, 'count', 'each'), price: 500 };

describe('packsApart', () => {
  test('a can from the shelf is told apart from cans that are bought, each once, in their order', () => {
    const packs = [
      { ...pack, id: 'gallon' },
      { ...pack, id: 'quart', shelf: true },
      { ...pack, id: 'pint', shelf: false },
    ];
    const { bought, shelf } = packsApart({ packs });
    expect(bought.map(({ id }) => id)).toEqual(['gallon', 'pint']);
    expect(shelf.map(({ id }) => id)).toEqual(['quart']);
  });

  test('a line without packs has none of either', () => {
    expect(packsApart({ packs: [] })).toEqual({ bought: [], shelf: [] });
  });
});
