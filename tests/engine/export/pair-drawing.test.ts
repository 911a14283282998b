import { describe, expect, test } from 'vitest';
import type { Placement } from '../../../extension/engine/cutting/instance.ts';
import {
  taperedPair,
  type TaperedPair,
} from '../../../extension/engine/cutting/strips/tapered-pair.ts';
import type { LineMark, Mark } from '../../../extension/engine/drawing/drawing.ts';
import { pairMarks } from '../../../extension/engine/export/pair-drawing.ts';

/** A strip 600 mm round that is 80 mm high at its ends and 40 mm in its middle, and its like. */
function pairOf(): TaperedPair {
  const heights = Array.from(
    { length: 61 },
    (_, step) => 60 + 20 * Math.cos((Math.PI * step) / 30),
  );
  const pair = taperedPair({ heights, round: 600, lap: 0 }, 3);
  if (pair === undefined) throw new Error('not narrower');
  return pair;
}

const pair = pairOf();

function lying(rotation: number): Placement {
  const upright = rotation % 180 !== 0;
  const [length, width] = upright ? [pair.width, pair.length] : [pair.length, pair.width];
  return {
    part: 'pair',
    stock: 'board',
    index: 0,
    x: 100,
    y: 50,
    rotation,
    mirrored: false,
    length,
    width,
  };
}

function marksOf(rotation: number): readonly Mark[] {
  return pairMarks(lying(rotation), pair, { name: 'Ring', row: { table: 'part', id: 'ring' } });
}

function loopsOf(rotation: number): readonly LineMark[] {
  return marksOf(rotation).flatMap((mark) => (mark.kind === 'line' ? [mark] : []));
}

function wordAt(rotation: number, seam: string): { x: number; y: number } {
  const found = marksOf(rotation).find((mark) => mark.kind === 'text' && mark.text.endsWith(seam));
  if (found?.kind !== 'text') throw new Error(`no words on ${seam}`);
  return found.at;
}

describe('pairMarks', () => {
  test.each([0, 90, 180, 270])(
    'turned by %i° the blank and both strips lie where the blank is laid',
    (rotation) => {
      const { x, y, length, width } = lying(rotation);
      const loops = loopsOf(rotation);
      expect(loops).toHaveLength(3);
      for (const { points } of loops) {
        for (const point of points) {
          expect(point.x).toBeGreaterThanOrEqual(x - 1e-6);
          expect(point.x).toBeLessThanOrEqual(x + length + 1e-6);
          expect(point.y).toBeGreaterThanOrEqual(y - 1e-6);
          expect(point.y).toBeLessThanOrEqual(y + width + 1e-6);
        }
      }
    },
  );

  test('each strip says at which side of the ring its seam is, on itself', () => {
    const [high, low] = [wordAt(0, 'seam at the high side'), wordAt(0, 'seam at the low side')];
    // The lower strip is 40 mm high in its middle, the upper one 80 mm.
    expect(high.y).toBeGreaterThan(50);
    expect(high.y).toBeLessThan(50 + 40);
    expect(low.y).toBeGreaterThan(50 + pair.width - 80);
    expect(low.y).toBeLessThan(50 + pair.width);
  });

  test('head to tail, the words change sides with the blank', () => {
    expect(wordAt(180, 'high side').y).toBeGreaterThan(wordAt(180, 'low side').y);
    expect(wordAt(90, 'high side').x).not.toBeCloseTo(wordAt(90, 'low side').x, 0);
  });

  test('marks lead to the row of the ring', () => {
    for (const mark of marksOf(0)) expect(mark.row).toEqual({ table: 'part', id: 'ring' });
  });
});
