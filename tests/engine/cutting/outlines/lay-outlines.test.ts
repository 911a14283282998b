import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { OutlinesInstance } from '../../../../extension/engine/cutting/instance.ts';
import { layOut } from '../../../../extension/engine/cutting/lay-out.ts';
import { layOutlines } from '../../../../extension/engine/cutting/outlines/lay-outlines.ts';
import { doorsOn } from '../../../helpers/door-parts.ts';
import { outlineFaults } from '../../../helpers/outline-checker.ts';

const anyShape = fc
  .tuple(
    fc.array(fc.integer({ min: 25, max: 100 }), { minLength: 3, maxLength: 9 }),
    fc.integer({ min: 40, max: 160 }),
  )
  .map(([radii, size]) =>
    // Corners on rays round a centre, so that no edge crosses another; some turn inwards.
    radii.map((radius, at): readonly [number, number] => {
      const angle = (at / radii.length) * 2 * Math.PI;
      return [(size * radius * Math.cos(angle)) / 100, (size * radius * Math.sin(angle)) / 100];
    }),
  );

const anyInstance = fc.record({
  kind: fc.constant('outlines' as const),
  effort: fc.constant('live' as const),
  kerf: fc.constantFrom(0, 3.2),
  trim: fc.constantFrom(0, 6),
  stocks: fc.constantFrom(
    [{ id: 'board', length: 600, width: 400, price: 10 }],
    [
      { id: 'board', length: 600, width: 400, price: 10 },
      { id: 'offcut', length: 350, width: 300, price: 0, limit: 1 },
    ],
  ),
  parts: fc
    .array(
      fc.record({
        points: anyShape,
        count: fc.integer({ min: 1, max: 4 }),
        rotations: fc.constantFrom([0], [0, 180], [0, 90, 180, 270], [0, 15, 30, 45]),
      }),
      { minLength: 1, maxLength: 4 },
    )
    .map((parts) => parts.map((part, at) => ({ ...part, id: `p${at}`, length: 1, width: 1 }))),
});

describe('layOutlines', () => {
  test('no outline lies on another, over the edge, or nearer than the kerf', () => {
    fc.assert(
      fc.property(anyInstance, (instance) => {
        const answer = layOutlines(instance);
        expect(outlineFaults(instance, answer)).toEqual([]);
        expect(answer.unplaced).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  test.each([
    [2440, 1220, 1],
    [1220, 1220, 2],
    [1220, 610, 3],
  ])('the boards of two pairs of doors come out of %i × %i mm boards', (length, width, most) => {
    const instance = { ...doorsOn(length, width), effort: 'live' as const };
    const answer = layOutlines(instance);
    expect(outlineFaults(instance, answer)).toEqual([]);
    expect(answer.count).toBeLessThanOrEqual(most);
  });

  test('small discs are cut from the openings of large parts', () => {
    const ring = (diameter: number): readonly (readonly [number, number])[] =>
      Array.from({ length: 48 }, (_, at) => {
        const angle = (at / 48) * 2 * Math.PI;
        return [(diameter / 2) * Math.cos(angle), (diameter / 2) * Math.sin(angle)] as const;
      });
    const instance: OutlinesInstance = {
      kind: 'outlines',
      kerf: 3,
      effort: 'live',
      stocks: [{ id: 'board', length: 210, width: 210, price: 5 }],
      parts: [
        { id: 'ring', length: 200, width: 200, count: 1, points: ring(200), holes: [ring(160)] },
        { id: 'disc', length: 120, width: 120, count: 1, points: ring(120) },
      ],
    };
    const answer = layOutlines(instance);
    expect([answer.count, answer.unplaced.length]).toEqual([1, 0]);
    expect(outlineFaults(instance, answer)).toEqual([]);
  });

  test('the same instance gives the same layout byte for byte', () => {
    const instance = { ...doorsOn(1220, 610), effort: 'live' as const };
    expect(JSON.stringify(layOut(instance))).toBe(JSON.stringify(layOut(instance)));
  });

  test('a part larger than every board is told', () => {
    const parts = [{ id: 'large', length: 900, width: 700, count: 2 }];
    const stocks = [{ id: 'board', length: 600, width: 400, price: 10 }];
    expect(layOutlines({ kind: 'outlines', stocks, parts }).unplaced).toEqual([
      { part: 'large', count: 2 },
    ]);
  });
});
