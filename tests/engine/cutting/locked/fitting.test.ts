import { describe, expect, test } from 'vitest';
import type { Fixed, RectanglesInstance } from '../../../../extension/engine/cutting/instance.ts';
import { fittingFixed } from '../../../../extension/engine/cutting/locked/fitting.ts';

const instance: RectanglesInstance = {
  kind: 'rectangles',
  stocks: [{ id: 'board', length: 1000, width: 600, price: 100, limit: 2 }],
  parts: [
    { id: 'a', length: 400, width: 200, count: 4, rotations: [0, 180] },
    { id: 'b', length: 200, width: 400, count: 4, rotations: [0, 180] },
  ],
  kerf: 3,
  trim: 10,
};

function held(id: string, part: string, at: Partial<Fixed> = {}): Fixed {
  return { id, part, stock: 'board', index: 0, x: 10, y: 10, rotation: 0, ...at };
}

function whys(...fixed: readonly Fixed[]): readonly string[] {
  return fittingFixed(instance, fixed).refused.map(({ fixed: one, why, other }) =>
    other === undefined ? `${one.id}: ${why}` : `${one.id}: ${why} ${other}`,
  );
}

describe('fittingFixed', () => {
  test('parts with a kerf between them stay; nearer ones do not', () => {
    expect(whys(held('1', 'a'), held('2', 'a', { y: 213 }))).toEqual([]);
    expect(whys(held('1', 'a'), held('2', 'a', { y: 212.9 }))).toEqual(['2: other 1']);
  });

  test('the trimmed edge is kept on all four sides', () => {
    expect(whys(held('1', 'a', { x: 590, y: 390 }))).toEqual([]);
    expect(whys(held('1', 'a', { x: 590.1 }))).toEqual(['1: edge']);
    expect(whys(held('1', 'a', { x: 9.9 }))).toEqual(['1: edge']);
  });

  test('a part may not be turned against its grain', () => {
    expect(whys(held('1', 'a', { rotation: 90 }))).toEqual(['1: turn']);
    expect(whys(held('1', 'a', { rotation: 180 }))).toEqual([]);
  });

  test('a part, or a stock, that is not there any more holds nothing', () => {
    expect(whys(held('1', 'c'))).toEqual(['1: part']);
    expect(whys(held('1', 'a', { stock: 'ply' }))).toEqual(['1: stock']);
  });

  test('no more copies are held than there are parts, no more sheets than there are on the shelf', () => {
    const copies = [0, 1, 2, 3, 4].map((at) =>
      held(String(at), 'a', { x: 10 + 405 * (at % 2), y: 10 + 205 * Math.floor(at / 2) }),
    );
    expect(whys(...copies)).toEqual(['4: part']);
    const sheets = [0, 1, 2].map((index) => held(String(index), 'b', { index }));
    expect(whys(...sheets)).toEqual(['2: stock']);
  });

  test('parts laid around a middle like a windmill’s sails cannot be sawn free', () => {
    const sails = [
      held('1', 'a', { x: 10, y: 10 }),
      held('2', 'b', { x: 413, y: 10 }),
      held('3', 'a', { x: 213, y: 413 }),
      held('4', 'b', { x: 10, y: 213 }),
    ];
    // 613 + 3 mm is the sails' reach: the trimmed sheet is 580 mm across, so the last two go over it.
    expect(whys(...sails.slice(0, 2))).toEqual([]);
    const wide = { ...instance, stocks: [{ id: 'board', length: 1000, width: 1000, price: 1 }] };
    const { refused } = fittingFixed(wide, sails);
    expect(refused.map(({ fixed, why }) => `${fixed.id}: ${why}`)).toEqual(['4: saw']);
    expect(fittingFixed({ ...wide, method: 'free' }, sails).refused).toEqual([]);
  });
});
