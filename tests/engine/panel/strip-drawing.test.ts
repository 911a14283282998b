import { describe, expect, test } from 'vitest';
import { stripDrawing } from '../../../extension/engine/index.ts';
import { inchBox, linesOf, textsOf } from '../../helpers/marks-of.ts';
import { placedPanel, placedRing, type PlacedJob } from '../../helpers/placed-job.ts';

function strip(job: PlacedJob = {}) {
  const panel = placedPanel(job);
  return stripDrawing(placedRing(panel), panel);
}

describe('stripDrawing', () => {
  test.each([
    // Closed forms: a circle of r = 3 3/4 in, 2 in at the centre, 15°. Perimeter of the oval of the round
    // baffle by the arithmetic-geometric mean.
    ['round_tube', 23.56194, 3.00481, 0.99519],
    ['round_baffle', 23.16226, 2.97057, 1.02943],
    ['square_wall', 23.56194, 3.07536, 1.06574],
  ])('a %s is %d in round, %d in high and %d in low', (build, round, high, low) => {
    const drawing = strip({ build });
    const { left, right, top } = inchBox(drawing, 'outline');
    expect(right - left).toBeCloseTo(round, 3);
    expect(top).toBeCloseTo(high, 4);
    const edge = linesOf(drawing, 'outline')[0]?.points.filter(({ y }) => y > 1) ?? [];
    expect(Math.min(...edge.map(({ y }) => y)) / 25.4).toBeCloseTo(low, 4);
  });

  test('the seam is at both ends, where the strip is highest', () => {
    const seams = linesOf(strip(), 'seam');
    expect(seams).toHaveLength(2);
    const heights = seams.map(({ points }) => points[1]?.y ?? 0);
    expect(heights[0]).toBeCloseTo(2.97057 * 25.4, 2);
    expect(heights[1]).toBeCloseTo(heights[0] ?? 0, 6);
  });

  test('heights are told at thirteen places, first the ends and the low side', () => {
    const heights = textsOf(strip(), 'dimension').slice(0, 13);
    // 2.97057 in and 1.02943 in to the nearest 1/16 in.
    expect(heights.slice(0, 3)).toEqual(['3 in', '3 in', '1 in'].map((text) => `≈ ${text}`));
    expect(linesOf(strip(), 'fold')).toHaveLength(11);
  });

  test('words say how long to cut it and list the heights', () => {
    const [first, second] = strip().words;
    expect(first).toMatch(/from the seam on the high side to the seam again\. Cut it .* long/);
    expect(second).toMatch(/^Height at 12 equal steps/);
  });
});
