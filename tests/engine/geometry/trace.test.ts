import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { mirrored, signedArea } from '../../../extension/engine/geometry/outline.ts';
import { readTrace } from '../../../extension/engine/geometry/read-trace.ts';
import { tracedThrough } from '../../../extension/engine/geometry/trace.ts';
import type { TracePoint } from '../../../extension/engine/geometry/read-trace.ts';

const settings = { units: 'mm', currency: 'EUR' } as const;

function through(points: readonly TracePoint[], smooth: boolean) {
  const trace = tracedThrough(points, smooth, settings);
  if (!trace.ok) throw new Error(trace.problem.message);
  return trace.value;
}

function onCircle(count: number): readonly TracePoint[] {
  return Array.from({ length: count }, (_, index) => {
    const angle = (index * 2 * Math.PI) / count;
    return { x: 100 * Math.cos(angle), y: 100 * Math.sin(angle), corner: false };
  });
}

describe('tracedThrough', () => {
  test('straight from point to point it has a corner at each', () => {
    const { outline } = through(onCircle(12), false);
    expect(outline.corners).toHaveLength(12);
    expect(signedArea(outline.points)).toBeCloseTo(0.5 * 12 * 10_000 * Math.sin(Math.PI / 6), 6);
  });

  test('smooth through twelve points of a circle it is the circle to a thousandth', () => {
    const { outline } = through(onCircle(12), true);
    expect(outline.corners).toEqual([]);
    expect(signedArea(outline.points) / (Math.PI * 10_000)).toBeCloseTo(1, 2);
    for (const { x, y } of outline.points) expect(Math.hypot(x, y) / 100).toBeCloseTo(1, 2);
  });

  test('between two corners it is straight, and other sides stay smooth', () => {
    const points = [
      { x: 0, y: 0, corner: true },
      { x: 200, y: 0, corner: true },
      { x: 180, y: 80, corner: false },
      { x: 100, y: 120, corner: false },
      { x: 20, y: 80, corner: false },
    ];
    const { outline, pieces } = through(points, true);
    expect(pieces[0]).toEqual({ to: points[1] });
    expect(outline.corners).toHaveLength(2);
  });

  test('points that make it cross itself are told with the place', () => {
    const crossing = [
      { x: 0, y: 0, corner: false },
      { x: 100, y: 100, corner: false },
      { x: 100, y: 0, corner: false },
      { x: 0, y: 100, corner: false },
    ];
    const trace = tracedThrough(crossing, false, settings);
    expect(trace.ok ? '' : trace.problem.message).toContain('crosses itself at (50 mm, 50 mm)');
  });

  test('mirrored twice it is the same, and mirrored once as large', () => {
    const radii = fc.array(fc.integer({ min: 60, max: 160 }), { minLength: 5, maxLength: 16 });
    fc.assert(
      fc.property(radii, fc.boolean(), (chosen, smooth) => {
        const points = chosen.map((radius, index) => {
          const angle = (index * 2 * Math.PI) / chosen.length;
          return {
            x: radius * Math.cos(angle),
            y: radius * Math.sin(angle),
            corner: index % 3 === 0,
          };
        });
        const trace = tracedThrough(points, smooth, settings);
        if (!trace.ok) return;
        const { outline } = trace.value;
        const once = mirrored(outline);
        expect(signedArea(once.points)).toBeCloseTo(signedArea(outline.points), 6);
        const twice = mirrored(once);
        expect(twice.corners).toEqual(outline.corners);
        for (const [index, { x, y }] of twice.points.entries()) {
          expect(x).toBeCloseTo(outline.points[index]?.x ?? NaN, 12);
          expect(y).toBe(outline.points[index]?.y);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('twice the measures are four times the area', () => {
    const points = onCircle(7).map((point, index) => ({ ...point, corner: index === 3 }));
    const twice = points.map(({ x, y, corner }) => ({ x: 2 * x, y: 2 * y, corner }));
    const area = (of: readonly TracePoint[]): number =>
      signedArea(through(of, true).outline.points);
    expect(area(twice) / area(points)).toBeCloseTo(4, 3);
  });
});

function read(text: string, mode: 'points' | 'stations' = 'points') {
  const points = readTrace(text, mode, settings);
  return points.ok ? points.value.map(({ x, y }) => [x, y]) : points.problem.message;
}

describe('readTrace', () => {
  test.each([
    [
      '0, 0\n10, 0\n10, 5',
      [
        [0, 0],
        [10, 0],
        [10, 5],
      ],
    ],
    [
      'x\ty\n0\t0\n10\t0\n\n10\t5\n',
      [
        [0, 0],
        [10, 0],
        [10, 5],
      ],
    ],
    [
      '0; 0\n1 in; 0\n1/2 in; 5 cm',
      [
        [0, 0],
        [25.4, 0],
        [12.7, 50],
      ],
    ],
    [
      '0 0\n10 0\n10 5',
      [
        [0, 0],
        [10, 0],
        [10, 5],
      ],
    ],
    [
      '0,0\n10,0\n10,0\n10,5\n0,0',
      [
        [0, 0],
        [10, 0],
        [10, 5],
      ],
    ],
  ])('%j is read', (text, points) => {
    expect(read(text)).toEqual(points);
  });

  test('a line that ends in corner is one', () => {
    const points = readTrace('0, 0, corner\n10, 0, *\n10, 5', 'points', settings);
    expect(points.ok ? points.value.map(({ corner }) => corner) : []).toEqual([true, true, false]);
  });

  test('a point that is listed twice is a corner where either says so', () => {
    const points = readTrace('0, 0, corner\n10, 0\n10, 5\n0, 0', 'points', settings);
    expect(points.ok ? points.value : []).toEqual([
      { x: 0, y: 0, corner: true },
      { x: 10, y: 0, corner: false },
      { x: 10, y: 5, corner: false },
    ]);
  });

  test('offsets from an edge come back along it, or along the other side', () => {
    expect(read('0, 30\n50, 40\n100, 0', 'stations')).toEqual([
      [0, 30],
      [50, 40],
      [100, 0],
      [0, 0],
    ]);
    expect(read('0, -10, 30\n100, -5, 20', 'stations')).toEqual([
      [0, 30],
      [100, 20],
      [100, -5],
      [0, -10],
    ]);
  });

  test.each([
    ['0, 0\n10\n5, 5', 'points', 'Line 2 has 1 figures'],
    ['0, 0\nten, 5\n5, 5', 'points', 'Line 2: “ten” does not begin with a number'],
    ['0, 0\n10, 0', 'points', 'three points or more; there are 2'],
    ['0, 5\n10, 5, 5\n20, 5', 'stations', 'Line 2 has 3 figures'],
    ['0, 5\n20, 5\n10, 5', 'stations', 'Line 3 does not lie further along'],
    ['', 'points', 'there are 0'],
  ] as const)('%j as %s is refused: %s', (text, mode, words) => {
    expect(read(text, mode)).toContain(words);
  });
});
