import { describe, expect, test } from 'vitest';
import { below, chanceFrom } from '../../../../extension/engine/cutting/chance.ts';
import type {
  CutAnswer,
  Fixed,
  OutlinesInstance,
  RectanglesInstance,
} from '../../../../extension/engine/cutting/instance.ts';
import { layOut } from '../../../../extension/engine/cutting/lay-out.ts';
import { comesApart, heldFaults, rectangleFaults } from '../../../helpers/cut-checker.ts';
import { outlineFaults } from '../../../helpers/outline-checker.ts';

function heldFrom({ placements }: CutAnswer, picked: (at: number) => boolean): readonly Fixed[] {
  return placements.flatMap(({ part, stock, index, x, y, rotation }, at) =>
    picked(at) ? [{ id: `lock ${at}`, part, stock, index, x, y, rotation }] : [],
  );
}

/** Boards of chance on two stocks; more of them with `more`. */
function boards(seed: number, method: 'guillotine' | 'free', more = 0): RectanglesInstance {
  const chance = chanceFrom(seed);
  const parts = Array.from({ length: 5 }, (_, at) => ({
    id: `p${at}`,
    length: 120 + below(chance, 500),
    width: 90 + below(chance, 300),
    count: 1 + below(chance, 4) + more,
    ...(chance() < 0.3 ? { rotations: [0, 180] } : {}),
  }));
  return {
    kind: 'rectangles',
    stocks: [
      { id: 'whole', length: 1220, width: 610, price: 2400 },
      { id: 'half', length: 610, width: 610, price: 1300, limit: 2 },
    ],
    parts,
    kerf: 3.2,
    trim: 6,
    method,
    effort: 'live',
    seed,
  };
}

function largeDisc(radius: number, corners: number): readonly (readonly [number, number])[] {
  return Array.from({ length: corners }, (_, at) => {
    const angle = (2 * Math.PI * at) / corners;
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as const;
  });
}

describe('layHeld', () => {
  test.each(['guillotine', 'free'] as const)(
    'parts that were held stay where they lie while others come and go (%s)',
    (method) => {
      for (let seed = 1; seed <= 25; seed++) {
        const before = layOut(boards(seed, method));
        const chance = chanceFrom(seed * 7);
        const fixed = heldFrom(before, () => chance() < 0.3);
        const instance = { ...boards(seed, method, seed % 2), fixed };
        const answer = layOut(instance);
        expect(heldFaults(instance, answer)).toEqual([]);
        expect(rectangleFaults(instance, answer)).toEqual([]);
        if (method === 'free') continue;
        for (const index of answer.sheets.keys())
          expect(comesApart(answer.placements.filter((one) => one.index === index))).toBe(true);
      }
    },
  );

  test('with all held and nothing changed, the layout is what it was', () => {
    const before = layOut(boards(3, 'guillotine'));
    const instance = { ...boards(3, 'guillotine'), fixed: heldFrom(before, () => true) };
    const answer = layOut(instance);
    expect(answer.price).toBe(before.price);
    const seen = ({ placements }: CutAnswer): readonly string[] =>
      placements.map(({ part, index, x, y }) => `${part} ${index} ${x} ${y}`).sort();
    expect(seen(answer)).toEqual(seen(before));
  });

  test('the room beside a held part is used: six boards and a held one on one sheet', () => {
    // 1000 × 600 mm: a strip of 200 mm along the lower edge is held free of nothing but its own part;
    // six of 300 × 190 mm go above it, three abreast in two rows: 2 × 190 + 2 × 3 ≤ 400 mm.
    const instance: RectanglesInstance = {
      kind: 'rectangles',
      stocks: [{ id: 'board', length: 1000, width: 600, price: 100 }],
      parts: [
        { id: 'strip', length: 1000, width: 200, count: 1 },
        { id: 'small', length: 300, width: 190, count: 6, rotations: [0, 180] },
      ],
      kerf: 3,
      fixed: [{ id: 'a', part: 'strip', stock: 'board', index: 0, x: 0, y: 0, rotation: 0 }],
    };
    const answer = layOut(instance);
    expect(answer.count).toBe(1);
    expect(answer.proven).toBe(true);
    expect(rectangleFaults(instance, answer)).toEqual([]);
  });

  test('saw cuts first open the rooms around what is held, and pass by every part', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const before = layOut(boards(seed, 'guillotine'));
      const instance = {
        ...boards(seed, 'guillotine', 1),
        fixed: heldFrom(before, (at) => at < 2),
      };
      const { cuts, placements } = layOut(instance);
      const near = 1e-3;
      const through = cuts.filter(({ index, way, at, from, to }) =>
        placements.some((one) => {
          if (one.index !== index) return false;
          const [low, size] = way === 'across' ? [one.x, one.length] : [one.y, one.width];
          const [side, span] = way === 'across' ? [one.y, one.width] : [one.x, one.length];
          const crosses = at + 3.2 > low + near && at < low + size - near;
          return crosses && side < to - near && side + span > from + near;
        }),
      );
      expect(cuts.length).toBeGreaterThan(0);
      expect(through).toEqual([]);
    }
  });

  test('held outlines stay, one inside another’s opening too', () => {
    const disc = largeDisc(60, 40);
    const instance: OutlinesInstance = {
      kind: 'outlines',
      stocks: [{ id: 'board', length: 1220, width: 610, price: 100 }],
      parts: [
        {
          id: 'ring',
          length: 320,
          width: 320,
          count: 3,
          points: [
            [0, 0],
            [320, 0],
            [320, 320],
            [0, 320],
          ],
          holes: [largeDisc(110, 48).map(([x, y]) => [x + 160, y + 160] as const)],
        },
        { id: 'disc', length: 120, width: 120, count: 5, points: disc },
      ],
      kerf: 3,
      trim: 5,
      effort: 'live',
    };
    const before = layOut(instance);
    expect(outlineFaults(instance, before)).toEqual([]);
    const fixed = heldFrom(before, (at) => at % 2 === 0);
    const held = { ...instance, fixed };
    const answer = layOut(held);
    expect(heldFaults(held, answer)).toEqual([]);
    expect(outlineFaults(held, answer)).toEqual([]);
    expect(answer.unplaced).toEqual([]);
  });

  test('what can not stay is laid like any other part', () => {
    const instance: RectanglesInstance = {
      kind: 'rectangles',
      stocks: [{ id: 'board', length: 1000, width: 600, price: 100 }],
      parts: [{ id: 'a', length: 400, width: 300, count: 2 }],
      fixed: [{ id: 'x', part: 'a', stock: 'board', index: 0, x: 700, y: 0, rotation: 0 }],
    };
    const { fixed, ...bare } = instance;
    expect(fixed).toHaveLength(1);
    expect(layOut(instance)).toEqual(layOut(bare));
  });
});
