import { describe, expect, test } from 'vitest';
import { loopLength, signedArea } from '../../../extension/engine/geometry/outline.ts';
import { parallelOval } from '../../../extension/engine/geometry/parallel-oval.ts';

describe('parallelOval', () => {
  // Steiner's formula with half axes 6 and 4, whose perimeter is 31.7308791786.
  test('an oval of half axes 6 and 4 grown by 1/2 has 92.0490614389', () => {
    const grown = parallelOval(12, 8, 0.5);
    expect(grown?.area).toBeCloseTo(92.0490614389, 9);
    expect(grown?.perimeter).toBeCloseTo(31.7308791786 + Math.PI, 9);
  });

  test.each([
    [300, 200, 40],
    [200, 300, 40],
    [300, 200, -60],
    [200, 300, -30],
  ])(
    'the points of oval(%d, %d) at %d enclose what the formula says',
    (length, width, distance) => {
      const grown = parallelOval(length, width, distance);
      expect(signedArea(grown?.points ?? []) / (grown?.area ?? 0)).toBeCloseTo(1, 4);
      expect(loopLength(grown?.points ?? []) / (grown?.perimeter ?? 0)).toBeCloseTo(1, 4);
      const box = grown?.box ?? { left: 0, right: 0, bottom: 0, top: 0 };
      expect(box.right - box.left).toBeCloseTo(length + 2 * distance, 2);
      expect(box.top - box.bottom).toBeCloseTo(width + 2 * distance, 2);
    },
  );

  test('far inside, where the curve would run over itself, it ends in two corners on the long axis', () => {
    // Tightest radius of the oval: 100² / 200 = 50.
    const inside = parallelOval(400, 200, -70);
    expect(inside?.corners).toHaveLength(2);
    expect(inside?.box.top).toBeCloseTo(30, 2);
    // Where two normals meet on the axis: x = √(a² − b²)·√(1 − d²/b²), half axes a and b.
    expect(inside?.box.right).toBeCloseTo(
      Math.sqrt(200 ** 2 - 100 ** 2) * Math.sqrt(1 - 0.7 ** 2),
      2,
    );
  });

  test('half its width inside, nothing is left', () => {
    expect(parallelOval(300, 200, -100)).toBeUndefined();
  });
});
