import { describe, expect, test } from 'vitest';
import { openOutlineFiles } from '../../../extension/engine/geometry/outline-files.ts';
import { readDxf } from '../../../extension/engine/geometry/dxf-file.ts';
import type { TracedOutline } from '../../../extension/engine/geometry/traced-outline.ts';

const settings = { units: 'mm', currency: 'EUR' } as const;

type Group = readonly [number, string | number];

function groups(...pairs: readonly Group[]): string {
  return pairs.map(([code, value]) => `${String(code)}\n${String(value)}\n`).join('');
}

function dxf(entities: string, units = 4, blocks = ''): string {
  const header = groups(
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$INSUNITS'],
    [70, units],
    [0, 'ENDSEC'],
  );
  const inside = groups([0, 'SECTION'], [2, 'BLOCKS']) + blocks + groups([0, 'ENDSEC']);
  const drawn = groups([0, 'SECTION'], [2, 'ENTITIES']) + entities + groups([0, 'ENDSEC']);
  return header + inside + drawn + groups([0, 'EOF']);
}

function line(...[x1, y1, x2, y2]: readonly [number, number, number, number]): string {
  return groups([0, 'LINE'], [8, 'EDGE'], [10, x1], [20, y1], [11, x2], [21, y2]);
}

function answer(text: string, name = '') {
  const files = openOutlineFiles(new Map([['a.dxf', text]]));
  return files.source({ address: `a.dxf${name}`, unit: undefined, settings });
}

function found(text: string, name = ''): TracedOutline {
  const outline = answer(text, name);
  if (!outline.ok) throw new Error(outline.problem.message);
  return outline.value;
}

function near(one: number, other: number): number {
  return Math.abs(one / other - 1);
}

describe('readDxf', () => {
  test('lines drawn in any order and direction join to a loop', () => {
    const text = dxf(
      line(100, 50, 0, 50) + line(0, 0, 100, 0) + line(0, 50, 0, 0) + line(100, 50, 100, 0),
    );
    const { area, corners } = found(text);
    expect(area).toBeCloseTo(5000, 9);
    expect(corners).toHaveLength(4);
  });

  test('a slot of two lines and two arcs', () => {
    const arc = (x: number, from: number, to: number): string =>
      groups([0, 'ARC'], [8, 'EDGE'], [10, x], [20, 25], [40, 25], [50, from], [51, to]);
    const text = dxf(
      line(25, 0, 125, 0) + arc(125, 270, 90) + line(125, 50, 25, 50) + arc(25, 90, 270),
    );
    expect(near(found(text).area, 100 * 50 + Math.PI * 625)).toBeLessThan(5e-5);
    expect(found(text).corners).toEqual([]);
  });

  test('a circle', () => {
    const text = dxf(groups([0, 'CIRCLE'], [8, '0'], [10, 50], [20, 60], [40, 40]));
    expect(near(found(text).area, Math.PI * 1600)).toBeLessThan(5e-5);
    expect(found(text).box.left).toBeCloseTo(10, 2);
  });

  test('a polyline whose pieces bulge: a rectangle with half a circle on it', () => {
    const vertex = (x: number, y: number, bulge = 0): string =>
      groups([10, x], [20, y], [91, 0], ...(bulge === 0 ? [] : ([[42, bulge]] as const)));
    const text = dxf(
      groups([0, 'LWPOLYLINE'], [8, 'EDGE'], [90, 4], [70, 1], [43, 0]) +
        vertex(0, 0) +
        vertex(100, 0, 1) +
        vertex(100, 40) +
        vertex(0, 40),
    );
    expect(near(found(text).area, 4000 + (Math.PI * 400) / 2)).toBeLessThan(5e-5);
    expect(found(text).box.right).toBeCloseTo(120, 2);
  });

  test('an old polyline with its vertices after it', () => {
    const vertex = (x: number, y: number): string =>
      groups([0, 'VERTEX'], [8, 'EDGE'], [10, x], [20, y]);
    const text = dxf(
      groups([0, 'POLYLINE'], [8, 'EDGE'], [66, 1], [70, 1]) +
        vertex(0, 0) +
        vertex(60, 0) +
        vertex(60, 30) +
        groups([0, 'SEQEND']),
    );
    expect(found(text).area).toBeCloseTo(900, 9);
  });

  test('an ellipse, whole and as two halves', () => {
    const half = (from: number, to: number): string =>
      groups(
        [0, 'ELLIPSE'],
        [8, 'EDGE'],
        [10, 5],
        [20, 7],
        [11, 0],
        [21, 80],
        [40, 0.5],
        [41, from],
        [42, to],
      );
    expect(near(found(dxf(half(0, 2 * Math.PI))).area, Math.PI * 80 * 40)).toBeLessThan(5e-5);
    const halves = dxf(half(0, Math.PI) + half(Math.PI, 2 * Math.PI));
    expect(near(found(halves).area, Math.PI * 80 * 40)).toBeLessThan(5e-5);
  });

  test('a rational spline that is a quarter of a circle, with two lines home', () => {
    const root = Math.SQRT1_2;
    const text = dxf(
      groups(
        ...([
          [0, 'SPLINE'],
          [8, 'EDGE'],
          [70, 4],
          [71, 2],
          [72, 6],
          [73, 3],
        ] as const),
        ...[0, 0, 0, 1, 1, 1].map((knot): Group => [40, knot]),
        ...[1, root, 1].map((weight): Group => [41, weight]),
        ...([
          [10, 100],
          [20, 0],
          [10, 100],
          [20, 100],
          [10, 0],
          [20, 100],
        ] as const),
      ) +
        line(0, 100, 0, 0) +
        line(0, 0, 100, 0),
    );
    expect(near(found(text).area, (Math.PI * 10_000) / 4)).toBeLessThan(5e-5);
  });

  test('a spline of several spans passes through where its knots are full', () => {
    const text = dxf(
      groups(
        ...([
          [0, 'SPLINE'],
          [8, 'EDGE'],
          [70, 0],
          [71, 3],
        ] as const),
        ...[0, 0, 0, 0, 1, 2, 2, 2, 2].map((knot): Group => [40, knot]),
        ...(
          [
            [0, 0],
            [0, 60],
            [50, 90],
            [100, 60],
            [100, 0],
          ] as const
        ).flatMap(([x, y]): Group[] => [
          [10, x],
          [20, y],
        ]),
      ) + line(100, 0, 0, 0),
    );
    const { box } = found(text);
    // At the middle knot a cubic weighs its control points 1/4, 1/2, 1/4: (60 + 2 × 90 + 60) / 4.
    expect(box.top).toBeCloseTo(75, 2);
  });

  test('a block drawn where it is inserted, turned and scaled, is of the layer it is inserted on', () => {
    const block =
      groups([0, 'BLOCK'], [2, 'POD'], [10, 10], [20, 0]) +
      line(10, 0, 30, 0) +
      line(30, 0, 30, 10) +
      line(30, 10, 10, 0) +
      groups([0, 'ENDBLK']);
    const insert = groups(
      [0, 'INSERT'],
      [8, 'PANEL'],
      [2, 'POD'],
      [10, 100],
      [20, 200],
      [41, 2],
      [42, 2],
      [50, 90],
    );
    const { area, box } = found(dxf(insert, 4, block), '#PANEL');
    expect(area).toBeCloseTo(400, 6);
    expect(box.left).toBeCloseTo(80, 6);
    expect(box.top).toBeCloseTo(240, 6);
  });

  test('a circle seen from behind lies on the other side', () => {
    const text = dxf(groups([0, 'CIRCLE'], [8, '0'], [10, 50], [20, 60], [40, 40], [230, -1]));
    expect(found(text).box.left).toBeCloseTo(-90, 2);
  });

  test.each([
    [1, 25.4],
    [4, 1],
    [5, 10],
    [6, 1000],
  ])('$INSUNITS %d is %d mm', (units, size) => {
    const read = readDxf(dxf(line(0, 0, 1, 1), units));
    expect(typeof read === 'string' ? read : read.unit).toBe(size);
  });

  test('a drawing without units asks for them', () => {
    const outline = answer(dxf(groups([0, 'CIRCLE'], [8, '0'], [10, 0], [20, 0], [40, 40]), 0));
    expect(outline.ok ? '' : outline.problem.code).toBe('outline-without-unit');
    expect(outline.ok ? '' : outline.problem.message).toContain('path("a.dxf", 1mm)');
  });

  test('remarks, paper space and what is invisible are passed over', () => {
    const text = dxf(
      groups([0, 'TEXT'], [8, 'NOTES'], [1, 'front']) +
        groups([0, 'CIRCLE'], [8, 'EDGE'], [67, 1], [10, 0], [20, 0], [40, 40]) +
        groups([0, 'CIRCLE'], [8, 'EDGE'], [60, 1], [10, 0], [20, 0], [40, 40]) +
        groups([0, 'CIRCLE'], [8, 'EDGE'], [10, 0], [20, 0], [40, 20]),
    );
    expect(near(found(text).area, Math.PI * 400)).toBeLessThan(5e-5);
  });

  test('solids and spatial lines are told of where they are all there is', () => {
    const outline = answer(dxf(groups([0, '3DSOLID'], [8, 'EDGE'])));
    expect(outline.ok ? '' : outline.problem.message).toContain('3DSOLID');
  });

  test.each(['', 'hello', 'AutoCAD Binary DXF', '0\nSECTION\nx\ny\n'])('%j is no DXF', (text) => {
    expect(typeof readDxf(text)).toBe('string');
  });

  test('a file that breaks off is read as far as it goes', () => {
    const text = dxf(
      groups([0, 'POLYLINE'], [8, 'EDGE'], [70, 1]) + groups([0, 'VERTEX'], [10, 1]),
    );
    expect(typeof readDxf(text.slice(0, -30))).toBe('object');
  });
});
