import { describe, expect, test } from 'vitest';
import type { Corner } from '../../../../extension/engine/cutting/outlines/shape-rows.ts';
import { slideTogether, type Lying } from '../../../../extension/engine/cutting/outlines/slide.ts';

function lying(
  outer: readonly Corner[],
  at: { readonly x: number; readonly y: number },
  holes: readonly (readonly Corner[])[] = [],
): Lying {
  return { loops: { outer, holes }, length: 100, width: 100, ...at };
}

const square: readonly Corner[] = [
  [0, 0],
  [100, 0],
  [100, 100],
  [0, 100],
];

function small(side: number, at: { readonly x: number; readonly y: number }): Lying {
  const outer = square.map(([x, y]): Corner => [(x * side) / 100, (y * side) / 100]);
  return { ...lying(outer, at), length: side, width: side };
}

describe('slideTogether', () => {
  test('a part is not held back by one that touches it from behind', () => {
    const parts = [lying(square, { x: 50, y: 0 }), lying(square, { x: 150, y: 0 })];
    slideTogether(parts, { x: 0, y: 0 });
    expect(parts.map(({ x }) => x)).toEqual([0, 100]);
  });

  test('loops drawn either way round stop alike', () => {
    const turned = [...square].reverse();
    const parts = [lying(turned, { x: 5, y: 7 }), lying(turned, { x: 130, y: 20 })];
    slideTogether(parts, { x: 0, y: 0 });
    expect(parts.map(({ x, y }) => [x, y])).toEqual([
      [0, 0],
      [100, 0],
    ]);
  });

  test('a part in an opening slides into its corner, and not through its edge', () => {
    const opening = square.map(([x, y]): Corner => [x * 0.6 + 20, y * 0.6 + 20]);
    const parts = [lying(square, { x: 0, y: 0 }, [opening]), small(30, { x: 40, y: 45 })];
    slideTogether(parts, { x: 0, y: 0 });
    expect(parts[1]).toMatchObject({ x: 20, y: 20 });
  });
});
