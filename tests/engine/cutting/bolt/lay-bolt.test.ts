import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layBolt } from '../../../../extension/engine/cutting/bolt/lay-bolt.ts';
import type { BoltInstance } from '../../../../extension/engine/cutting/instance.ts';
import { heldFaults, rectangleFaults } from '../../../helpers/cut-checker.ts';

const vinyl = { id: 'vinyl', length: 228.6, width: 1371.6, price: 7 };

const anyInstance = fc.record({
  kind: fc.constant('bolt' as const),
  effort: fc.constant('live' as const),
  trim: fc.constantFrom(0, 10),
  kerf: fc.constantFrom(0, 2),
  repeat: fc.constantFrom({ along: 0, across: 0 }, { along: 64, across: 50 }),
  stocks: fc.constant([vinyl]),
  parts: fc
    .array(
      fc.record({
        length: fc.integer({ min: 50, max: 1500 }),
        width: fc.integer({ min: 50, max: 1300 }),
        count: fc.integer({ min: 1, max: 5 }),
        rotations: fc.constantFrom([0], [0, 180], [0, 90, 180, 270]),
      }),
      { minLength: 1, maxLength: 5 },
    )
    .map((parts) => parts.map((part, index) => ({ ...part, id: `p${index}` }))),
});

describe('layBolt', () => {
  test('every layout can be cut: edges, selvage, turns and repeats hold', () => {
    fc.assert(
      fc.property(anyInstance, (instance) => {
        const answer = layBolt(instance);
        expect(rectangleFaults(instance, answer)).toEqual([]);
        for (const { x, y } of answer.placements) {
          const { along, across } = instance.repeat;
          if (along > 0) expect((x + 1e-6) % along).toBeLessThan(1e-3);
          if (across > 0) expect((y - instance.trim + 1e-6) % across).toBeLessThan(1e-3);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('pieces that were held stay while others come and go; edges and repeats hold', () => {
    const which = fc.array(fc.boolean(), { minLength: 25, maxLength: 25 });
    fc.assert(
      fc.property(anyInstance, which, fc.nat(2), (instance, held, more) => {
        const before = layBolt(instance);
        const fixed = before.placements
          .filter((_, at) => held[at] === true)
          .map(({ part, stock, index, x, y, rotation }, at) => ({
            ...{ id: `held${String(at)}`, part, stock, index, x, y, rotation },
          }));
        const extra = { id: 'more', length: 300, width: 200, count: more, rotations: [0] };
        const again = { ...instance, parts: [...instance.parts, extra], fixed };
        const after = layBolt(again);
        expect(rectangleFaults(again, after)).toEqual([]);
        expect(heldFaults(again, after)).toEqual([]);
        for (const { x, y } of after.placements) {
          const { along, across } = instance.repeat;
          if (along > 0) expect((x + 1e-6) % along).toBeLessThan(1e-3);
          if (across > 0) expect((y - instance.trim + 1e-6) % across).toBeLessThan(1e-3);
        }
        const reach = Math.max(0, ...after.placements.map((one) => one.x + one.length));
        expect(after.length).toBeCloseTo(reach, 3);
      }),
      { numRuns: 60 },
    );
  });

  test('a piece held a yard up the roll leaves its room before it for others', () => {
    const parts = [{ id: 'cover', length: 400, width: 1000, count: 3, rotations: [0] }];
    const hold = {
      id: 'lock',
      part: 'cover',
      stock: 'vinyl',
      index: 0,
      x: 900,
      y: 100,
      rotation: 0,
    };
    const answer = layBolt({ kind: 'bolt', stocks: [vinyl], parts, fixed: [hold] });
    expect(answer.placements.map(({ x }) => x).toSorted((a, b) => a - b)).toEqual([0, 400, 900]);
    expect(answer.length).toBe(1300);
  });

  test('what does not lie on a whole repeat, or over the selvage, is laid like any other', () => {
    const parts = [{ id: 'cover', length: 400, width: 1000, count: 1, rotations: [0] }];
    const at = (x: number, y: number): BoltInstance => ({
      ...{ kind: 'bolt', stocks: [vinyl], parts, trim: 10, repeat: { along: 64, across: 0 } },
      fixed: [{ id: 'lock', part: 'cover', stock: 'vinyl', index: 0, x, y, rotation: 0 }],
    });
    expect(layBolt(at(128, 10)).placements[0]).toMatchObject({ fixed: 'lock', x: 128 });
    expect(layBolt(at(100, 10)).placements[0]).toMatchObject({ x: 0 });
    expect(layBolt(at(128, 5)).placements[0]).toMatchObject({ x: 0 });
  });

  test('two covers of 36 × 26 in lie side by side on a 54 in bolt: a yard, four quarters', () => {
    const instance: BoltInstance = {
      kind: 'bolt',
      stocks: [vinyl],
      parts: [{ id: 'cover', length: 914.4, width: 660.4, count: 2, rotations: [0] }],
    };
    const answer = layBolt(instance);
    expect(answer.length).toBeCloseTo(914.4, 6);
    expect([answer.count, answer.price, answer.proven]).toEqual([4, 28, true]);
  });

  test('three covers wider than a third of the bolt need two rows', () => {
    const parts = [{ id: 'cover', length: 600, width: 700, count: 3, rotations: [0] }];
    const answer = layBolt({ kind: 'bolt', stocks: [vinyl], parts });
    expect(answer.length).toBe(1800);
    expect(answer.proven).toBe(true);
  });

  test('pieces cut from one rectangle come back to its length (made by cutting 40 × 15 apart)', () => {
    // Seven rectangles that fill a strip 15 wide for 40, cut apart by hand.
    const parts = [
      { id: 'a', length: 20, width: 10, count: 1 },
      { id: 'b', length: 20, width: 10, count: 1 },
      { id: 'c', length: 25, width: 5, count: 1 },
      { id: 'd', length: 15, width: 5, count: 1 },
    ];
    const stocks = [{ id: 'cloth', length: 1, width: 15, price: 1 }];
    const rotations = [0];
    const answer = layBolt({
      kind: 'bolt',
      stocks,
      parts: parts.map((part) => ({ ...part, rotations })),
    });
    expect([answer.length, answer.utilisation]).toEqual([40, 1]);
  });

  test('a piece wider than the bolt is told', () => {
    const parts = [{ id: 'wide', length: 500, width: 1400, count: 1, rotations: [0] }];
    expect(layBolt({ kind: 'bolt', stocks: [vinyl], parts }).unplaced).toEqual([
      { part: 'wide', count: 1 },
    ]);
  });
});
