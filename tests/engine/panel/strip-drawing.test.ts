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

  test.each([
    // The ring leans at a clock of 90°: the low side is there, the high side at 270°. A tube of r = 3 3/4 in
    // that leans 15° and stands 2 in in the middle falls by r·tan 15° to its low side.
    ['90 deg', 2 - 3.75 * Math.tan(Math.PI / 12)],
    ['0 deg', 2],
    ['180 deg', 2],
    ['-90 deg', 2 + 3.75 * Math.tan(Math.PI / 12)],
    ['60 deg', 2 - 3.75 * Math.tan(Math.PI / 12) * Math.cos(Math.PI / 6)],
  ])('with its seam at %s the strip of a tube begins and ends %d in high', (seam, high) => {
    const seams = linesOf(strip({ build: 'round_tube', seam }), 'seam');
    const heights = seams.map(({ points }) => (points[1]?.y ?? 0) / 25.4);
    expect(heights[0]).toBeCloseTo(high, 4);
    expect(heights[1]).toBeCloseTo(high, 4);
  });

  test('a quarter round from the seam the strip is as high as the tube is there, seen from outside', () => {
    // From straight up on against the clock comes the front, its high side; then down; then the rear.
    const folds = linesOf(strip({ build: 'round_tube', seam: '0 deg' }), 'fold');
    const heights = folds.map(({ points }) => (points[1]?.y ?? 0) / 25.4);
    expect(heights[2]).toBeCloseTo(2 + 3.75 * Math.tan(Math.PI / 12), 4);
    expect(heights[8]).toBeCloseTo(2 - 3.75 * Math.tan(Math.PI / 12), 4);
  });

  test('a strip whose seam is set says where its high and low sides are', () => {
    const at = (seam: string): readonly string[] => textsOf(strip({ seam }), 'note');
    expect(at('0 deg')).toEqual(['seam', 'high side', 'low side']);
    expect(at('90 deg')).toEqual(['seam, low side', 'high side']);
    expect(strip({ seam: '0 deg' }).words[0]).toContain(
      'from the seam, 0 deg from straight up, to the seam again',
    );
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
