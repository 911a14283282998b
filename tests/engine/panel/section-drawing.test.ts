import { describe, expect, test } from 'vitest';
import { sectionDrawing } from '../../../extension/engine/index.ts';
import { inchBox, linesOf, textsOf } from '../../helpers/marks-of.ts';
import { placedPanel, placedRing, type PlacedJob } from '../../helpers/placed-job.ts';

function section(job: PlacedJob = {}) {
  const panel = placedPanel(job);
  return sectionDrawing(placedRing(panel), panel);
}

const tilt = Math.PI / 12;

describe('sectionDrawing', () => {
  test.each([
    // Geometry, as in the wall heights of the three builds: 2 in ± 3 3/4 in × sin 15° or × tan 15°.
    ['round_baffle', 3.75 * Math.sin(tilt), 3.75 * Math.cos(tilt)],
    ['round_tube', 3.75 * Math.tan(tilt), 3.75],
    ['square_wall', 3.75 * Math.sin(tilt), 3.75 * Math.cos(tilt)],
  ])('the lip of a %s rises and falls as its build says', (build, rise, reach) => {
    const [high, low] = linesOf(section({ build }), 'ring').map(({ points }) => points[0]);
    const inches = (point: { x: number; y: number } = { x: NaN, y: NaN }): readonly number[] =>
      [point.x, point.y].map((mm) => Number((mm / 25.4).toFixed(6)));
    const six = (value: number): number => Number(value.toFixed(6));
    expect(inches(high)).toEqual([six(-reach), six(2.25 + rise)]);
    expect(inches(low)).toEqual([six(reach), six(2.25 - rise)]);
  });

  test('walls stand on the front of the base', () => {
    for (const { points } of linesOf(section(), 'ring'))
      expect(Math.min(...points.map(({ y }) => y)) / 25.4).toBeCloseTo(0.25, 6);
  });

  test('a baffle on top of the strip lowers the strip by its thickness square to the seat', () => {
    const panel = placedPanel({ seat: 'top' });
    const ring = placedRing(panel);
    const [wall] = linesOf(sectionDrawing(ring, panel), 'ring');
    const top = 57.15 + 95.25 * Math.sin(tilt) - ring.onTop / Math.cos(tilt);
    expect(ring.onTop).toBeGreaterThan(5);
    expect(wall?.points[0]?.y).toBeCloseTo(top, 6);
  });

  test('the magnet’s lower corner comes as deep as the driver’s sizes say', () => {
    // 2 1/4 in − 2 3/4 in × cos 15° − 1 3/4 in × sin 15° = −0.85923 in.
    const deepest = Math.min(
      ...linesOf(section(), 'driver').flatMap(({ points }) => points.map(({ y }) => y)),
    );
    expect(deepest / 25.4).toBeCloseTo(2.25 - 2.75 * Math.cos(tilt) - 1.75 * Math.sin(tilt), 6);
    expect(section().words.at(-1)).toContain('behind the base plane');
  });

  test('the base is cut open under the ring', () => {
    expect(linesOf(section(), 'outline')).toHaveLength(2);
    expect(inchBox(section(), 'outline').top).toBeCloseTo(0.25, 6);
  });

  test('depth, high side, low side and what comes behind are dimensions', () => {
    const texts = textsOf(section(), 'dimension');
    expect(texts).toHaveLength(4);
    expect(texts).toContain('2 1/4 in');
  });
});
