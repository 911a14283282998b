import { describe, expect, test } from 'vitest';
import { levelLines } from '../../../extension/engine/panel/level-lines.ts';

/** A pyramid of four triangles, 10 high over a square of side 20. */
const pyramid = {
  points: [-10, -10, 0, 10, -10, 0, 10, 10, 0, -10, 10, 0, 0, 0, 10],
  triangles: [0, 1, 4, 1, 2, 4, 2, 3, 4, 3, 0, 4],
};

const height = (node: number): number => pyramid.points[3 * node + 2] ?? 0;

describe('levelLines', () => {
  test('a contour half-way up a pyramid is one closed square of half the side', () => {
    const lines = levelLines(pyramid, height, 5);
    expect(lines).toHaveLength(1);
    const [line = []] = lines;
    expect(line).toHaveLength(5);
    expect(line.at(-1)).toEqual(line[0]);
    for (const { x, y, z } of line) {
      expect(Math.max(Math.abs(x), Math.abs(y))).toBeCloseTo(5, 9);
      expect(z).toBeCloseTo(5, 9);
    }
  });

  test('a plane through the middle cuts it up one side and down the other', () => {
    const across = (node: number): number => (pyramid.points[3 * node + 1] ?? 0) - 1e-6;
    const [line = []] = levelLines(pyramid, across, 0);
    expect(line.map(({ x }) => Math.abs(Math.round(x)))).toEqual(
      expect.arrayContaining([10, 0, 10]),
    );
    expect(Math.max(...line.map(({ z }) => z))).toBeCloseTo(10, 4);
  });

  test('two pyramids have two contours', () => {
    const points = [
      ...pyramid.points,
      ...pyramid.points.map((one, at) => (at % 3 === 0 ? one + 50 : one)),
    ];
    const triangles = [...pyramid.triangles, ...pyramid.triangles.map((node) => node + 5)];
    const lines = levelLines({ points, triangles }, (node) => points[3 * node + 2] ?? 0, 5);
    expect(lines).toHaveLength(2);
  });

  test('above the top there is nothing', () => {
    expect(levelLines(pyramid, height, 10)).toEqual([]);
  });
});
