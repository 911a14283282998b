import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CutAnswer, OutlinesInstance } from '../../../../extension/engine/cutting/instance.ts';
import {
  taperedPair,
  type TaperedPair,
  type TaperedStrip,
} from '../../../../extension/engine/cutting/strips/tapered-pair.ts';
import { outlineFaults } from '../../../helpers/outline-checker.ts';

const inch = 25.4;

/** The wall of an upright tube that is cut on the slope, laid flat from its high side; mm. */
function tube(diameter: number, tilt: number, low: number, lap = 0): TaperedStrip {
  const rise = (diameter / 2) * Math.tan(tilt);
  const steps = 720;
  return {
    heights: Array.from(
      { length: steps + 1 },
      (_, step) => low + rise * (1 + Math.cos((2 * Math.PI * step) / steps)),
    ),
    round: Math.PI * diameter,
    lap,
  };
}

function degrees(count: number): number {
  return (count * Math.PI) / 180;
}

function pairOf(strip: TaperedStrip, kerf: number): TaperedPair {
  const pair = taperedPair(strip, kerf);
  if (pair === undefined) throw new Error('not narrower');
  return pair;
}

/** What is wrong with both strips on a sheet as wide as the pair, by a check that knows only outlines. */
function faultsOf({ length, width, highSeam, lowSeam }: TaperedPair, kerf: number, wide = width) {
  const shift = wide - width;
  const loops = [highSeam, lowSeam.map(([x, y]): readonly [number, number] => [x, y + shift])];
  const parts = loops.map((points, index) => {
    const high = Math.max(...points.map(([, y]) => y)) - Math.min(...points.map(([, y]) => y));
    return { id: String(index), length, width: high, count: 1, points };
  });
  const stock = { id: 'blank', length, width: wide, price: 1 };
  const instance: OutlinesInstance = { kind: 'outlines', stocks: [stock], parts, kerf };
  const answer: CutAnswer = {
    kind: 'outlines',
    count: 1,
    price: 1,
    bound: 1,
    priceBound: 1,
    proven: true,
    utilisation: 1,
    sheets: [{ stock: 'blank', utilisation: 1 }],
    placements: parts.map((part, index) => ({
      part: part.id,
      stock: 'blank',
      index: 0,
      x: 0,
      y: Math.min(...(loops[index] ?? []).map(([, y]) => y)),
      rotation: 0,
      mirrored: false,
      length,
      width: part.width,
    })),
    cuts: [],
    patterns: [],
    unplaced: [],
  };
  return outlineFaults(instance, answer, 0.005);
}

describe('taperedPair', () => {
  test('8 in across, 15°, 2 in at the low side: low + high and no cut between', () => {
    // By hand: high = 2 + 8 × tan 15° = 2 + 8 × 0.26795 = 4.1436 in; the heights over one place of the
    // blank add up to 6.1436 in everywhere, against 8.2872 in for two rectangles.
    const pair = pairOf(tube(8 * inch, degrees(15), 2 * inch), 0);
    expect(pair.width / inch).toBeCloseTo(6.1436, 3);
    expect(pair.apart / inch).toBeCloseTo(8.2872, 3);
    expect(pair.length / inch).toBeCloseTo(25.1327, 3);
  });

  test('a cut of 1/8 in runs on the slope: it takes 1/8 in ÷ cos 15° of the width', () => {
    // By hand: 0.125 ÷ 0.96593 = 0.12941 in, so 6.2730 in.
    const pair = pairOf(tube(8 * inch, degrees(15), 2 * inch), inch / 8);
    expect(pair.width / inch).toBeCloseTo(6.273, 3);
  });

  test('180 mm across, 15°, 60 mm in the middle, cut of 3 mm: 123.11 mm in place of 171.23 mm', () => {
    // By hand: rise 90 × tan 15° = 24.115 mm; 120 + 3 ÷ cos 15° = 123.106; 2 × 84.115 + 3 = 171.231.
    const pair = pairOf(tube(180, degrees(15), 60 - 90 * Math.tan(degrees(15))), 3);
    expect(pair.width).toBeCloseTo(123.11, 1);
    expect(pair.apart).toBeCloseTo(171.23, 1);
  });

  test('one strip is highest at its ends, the other in its middle; both are as long as the blank', () => {
    const strip = tube(180, degrees(15), 40);
    const { length, width, highSeam, lowSeam } = pairOf(strip, 3);
    const high = Math.max(...strip.heights);
    expect(highSeam).toContainEqual([0, high]);
    expect(highSeam).toContainEqual([length, high]);
    const deepest = lowSeam.toSorted(([, a], [, b]) => a - b)[0];
    expect(deepest?.[0]).toBeCloseTo(length / 2, 6);
    expect(deepest?.[1]).toBeCloseTo(width - high, 6);
  });

  test('what laps is as high as what it lies on', () => {
    const strip = tube(180, degrees(15), 40, 30);
    const { highSeam } = pairOf(strip, 0);
    const at = (x: number): number => highSeam.find((one) => one[0] === x && one[1] > 0)?.[1] ?? 0;
    const rise = 90 * Math.tan(degrees(15));
    expect(at(strip.round + 30)).toBeCloseTo(40 + rise * (1 + Math.cos(30 / 90)), 2);
  });

  test('an upright ring is not paired: its strips are rectangles', () => {
    expect(taperedPair(tube(180, 0, 50), 3)).toBeUndefined();
  });

  test('a ring that leans so little that the slanting cut eats what it saves is not paired', () => {
    // Two steps of a hundredth of a millimetre are the least that counts.
    expect(taperedPair(tube(20, degrees(0.01), 50), 3)).toBeUndefined();
  });

  test('a wall that would end below its base is not paired', () => {
    expect(taperedPair(tube(180, degrees(15), -1), 3)).toBeUndefined();
  });

  test('with the seam fixed a quarter round, both strips are alike and save as much', () => {
    const { heights, round } = tube(8 * inch, degrees(15), 2 * inch);
    const quarter = (heights.length - 1) / 4;
    const once = heights.slice(1);
    const from = [...once.slice(quarter - 1), ...once.slice(0, quarter)];
    const pair = pairOf({ heights: from, round, lap: 0, fixed: true }, 0);
    // Low 2 in and high 2 + 8 × tan 15° in, as with seams at opposite sides.
    expect(pair.width / inch).toBeCloseTo(4 + 8 * Math.tan(degrees(15)), 2);
    expect(pair.turned).toBe(true);
    expect(faultsOf(pair, 0)).toEqual([]);
    // Turned end for end about the middle of the blank, one strip is the other.
    const turned = pair.highSeam.map(([x, y]) => [pair.length - x, pair.width - y]);
    const places = (loop: readonly (readonly number[])[]): readonly string[] =>
      loop
        .map((at) => at.map((one) => one.toFixed(6).replace('-0.000000', '0.000000')).join(' '))
        .toSorted();
    expect(places(turned)).toEqual(places(pair.lowSeam));
  });

  test('with the seam fixed on the high side, humps meet humps: not paired', () => {
    expect(taperedPair({ ...tube(180, degrees(15), 50), fixed: true }, 3)).toBeUndefined();
  });

  test('strips never touch, keep the cut, stay in the blank, and no narrower blank would do', () => {
    const wave = fc.record({
      first: fc.double({ min: 2, max: 40, noNaN: true }),
      second: fc.double({ min: -6, max: 6, noNaN: true }),
      third: fc.double({ min: -3, max: 3, noNaN: true }),
      round: fc.double({ min: 150, max: 900, noNaN: true }),
      lap: fc.double({ min: 0, max: 60, noNaN: true }),
      kerf: fc.constantFrom(0, 1, 3.175, 6),
      steps: fc.constantFrom(24, 60, 96),
    });
    fc.assert(
      fc.property(wave, ({ first, second, third, round, lap, kerf, steps }) => {
        const heights = Array.from({ length: steps + 1 }, (_, step) => {
          const turn = (2 * Math.PI * step) / steps;
          return (
            60 + first * Math.cos(turn) + second * Math.cos(2 * turn) + third * Math.cos(3 * turn)
          );
        });
        const pair = taperedPair({ heights, round, lap }, kerf);
        if (pair === undefined) return;
        expect(faultsOf(pair, kerf)).toEqual([]);
        expect(pair.width).toBeLessThan(pair.apart);
        // With 0.04 mm taken off the width, the strips come nearer than the cut.
        if (kerf > 0) expect(faultsOf(pair, kerf, pair.width - 0.04)).not.toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
