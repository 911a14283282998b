import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { LineMark } from '../../../extension/engine/drawing/drawing.ts';
import { drawingDxf } from '../../../extension/engine/export/drawing-dxf.ts';
import { drawingSvg } from '../../../extension/engine/export/drawing-svg.ts';
import { signedArea } from '../../../extension/engine/geometry/outline.ts';
import { jobPatterns } from '../../../extension/engine/panel/patterns.ts';
import type { Pattern } from '../../../extension/engine/panel/pattern-marks.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { wantedOutlines } from '../../../extension/engine/session/wants.ts';
import { areaOf, readDxfLines, readSvgLines } from '../../helpers/read-drawings.ts';

const folder = new URL('../../../sample-jobs/', import.meta.url);

function textOf(path: string): string {
  return readFileSync(new URL(path, folder), 'utf8');
}

function opened(name: string) {
  const text = textOf(name);
  const outlines = wantedOutlines(readFile(text)).map((path) => [path, textOf(path)] as const);
  const { workbook, book, settings } = openSession(text, undefined, new Map(outlines)).snapshot();
  return { workbook, patterns: jobPatterns({ answers: workbook, book, settings }) };
}

const pair = opened('front-door-pair.paneljob');
const sedan = opened('five-panel-sedan.paneljob');
const door = opened('two-ring-door.paneljob');

function found(patterns: readonly Pattern[], id: string): Pattern {
  const pattern = patterns.find(({ drawing }) => drawing.id === id);
  if (pattern === undefined) throw new Error(`no pattern ${id}`);
  return pattern;
}

function lines({ drawing }: Pattern, role: LineMark['role']): readonly LineMark[] {
  return drawing.marks.flatMap((mark) =>
    mark.kind === 'line' && mark.role === role ? [mark] : [],
  );
}

function figure({ workbook }: typeof pair, id: string, column: string): number {
  const result = workbook.row('part', id)?.cell(column).result;
  if (result?.state !== 'value' || result.value.kind !== 'quantity') {
    throw new Error(`${id}.${column} has no figure`);
  }
  return result.value.base;
}

function area(pattern: Pattern, role: LineMark['role'] = 'outline'): number {
  return signedArea(lines(pattern, role)[0]?.points ?? []);
}

describe('jobPatterns', () => {
  test('a pair has its base for both hands, the left the mirror image of the right', () => {
    const right = found(door.patterns, 'door_base_right');
    const left = found(door.patterns, 'door_base_left');
    expect(area(right) / figure(door, 'door_base', 'area')).toBeCloseTo(1, 4);
    expect(area(left)).toBeCloseTo(area(right), 6);
    const centres = (pattern: Pattern): readonly number[] =>
      lines(pattern, 'hole').map(({ points }) =>
        points.reduce((sum, { x }) => sum + x / points.length, 0),
      );
    expect(centres(right)).toHaveLength(2);
    for (const [index, x] of centres(right).entries()) {
      expect(centres(left)[index]).toBeCloseTo(-x, 6);
    }
    expect(left.drawing.title).toMatch(/, left, seen from inside the car$/);
  });

  test('a baffle has its driver’s cut-out in its middle', () => {
    const [baffle] = pair.workbook.rows('part').filter(({ kind }) => kind === 'baffle');
    const pattern = found(pair.patterns, baffle?.id ?? '');
    expect(area(pattern) / figure(pair, baffle?.id ?? '', 'area')).toBeCloseTo(1, 4);
    const [hole] = lines(pattern, 'hole');
    const across = (hole?.points ?? []).map(({ x }) => x);
    const driver = pair.workbook.row('driver', baffle?.cell('driver').text ?? '');
    const { value } = driver?.cell('cutout').result as { value: { base: number } };
    expect(Math.max(...across) - Math.min(...across)).toBeCloseTo(value.base, 2);
  });

  test('a ring’s strip is as long as the strip that is bought, as high as its sides, and its wall between', () => {
    const rings = pair.workbook.rows('part').filter(({ kind }) => kind === 'ring');
    expect(rings.length).toBeGreaterThan(0);
    for (const { id } of rings) {
      const [strip] = lines(found(pair.patterns, `${id}_strip`), 'outline');
      const points = strip?.points ?? [];
      const longest = Math.max(...points.map(({ x }) => x));
      expect(longest / figure(pair, id, 'length')).toBeCloseTo(1, 4);
      expect(Math.max(...points.map(({ y }) => y))).toBeCloseTo(figure(pair, id, 'high'), 1);
      const heights = points.filter(({ y }) => y > 0).map(({ y }) => y);
      expect(Math.min(...heights)).toBeCloseTo(figure(pair, id, 'low'), 1);
    }
  });

  test('paper to wrap round a stack or tube encloses its wall', () => {
    const stacks = sedan.workbook
      .rows('part')
      .filter(({ kind }) => /^(stacked|tube)_ring$/.test(kind));
    expect(stacks.length).toBeGreaterThan(0);
    for (const { id } of stacks) {
      const pattern = found(sedan.patterns, `${id}_strip`);
      expect(area(pattern) / figure(sedan, id, 'wall')).toBeCloseTo(1, 3);
      expect(pattern.drawing.title).toContain('paper to wrap round');
    }
  });

  test('blanks of cloth and covering are as large as those that are bought, with the outline inside', () => {
    for (const kind of ['skin', 'vinyl', 'grille_cloth']) {
      const rows = pair.workbook.rows('part').filter((row) => row.kind === kind);
      expect(rows.length, kind).toBeGreaterThan(0);
      for (const { id } of rows) {
        const pattern = found(pair.patterns, id);
        const size = figure(pair, id, 'length') * figure(pair, id, 'width');
        expect(area(pattern)).toBeCloseTo(size, 3);
        expect(lines(pattern, 'fold')).toHaveLength(1);
        expect(pattern.drawing.words.join(' ')).toContain('Allowance');
      }
    }
  });

  test('a base tells what cloth and covering need beyond it', () => {
    const { words } = found(pair.patterns, 'door_base_left').drawing;
    expect(words.filter((text) => text.includes('beyond this outline')).length).toBeGreaterThan(1);
  });

  test('what has no place on the base yet is not drawn to be cut, and the pattern says so', () => {
    const pattern = found(pair.patterns, 'door_base_left');
    expect(lines(pattern, 'hole')).toEqual([]);
    expect(pattern.drawing.words.join(' ')).toContain('is not drawn: it has no place on the base');
  });

  test('a row of one hand is on the base of that hand only', () => {
    const text = textOf('two-ring-door.paneljob').replace(
      'kind = "hole"\n\non = "door_base"\ndriver = "twt"\n',
      'kind = "hole"\n\non = "door_base"\ndriver = "twt"\n\nhand = "right"\n',
    );
    const outlines = new Map([['outlines/door.dxf', textOf('outlines/door.dxf')]]);
    const { workbook, book, settings } = openSession(text, undefined, outlines).snapshot();
    const patterns = jobPatterns({ answers: workbook, book, settings });
    expect(lines(found(patterns, 'door_base_right'), 'hole')).toHaveLength(2);
    expect(lines(found(patterns, 'door_base_left'), 'hole')).toHaveLength(1);
  });

  test('a blank for a drawn outline is made for both hands, its fold mirrored', () => {
    const [left, right] = ['door_cover_left', 'door_cover_right'].map((id) =>
      found(door.patterns, id),
    );
    const leftmost = (pattern: Pattern | undefined): number =>
      pattern === undefined
        ? NaN
        : Math.min(...(lines(pattern, 'fold')[0]?.points ?? []).map(({ x }) => x));
    const rightmost = (pattern: Pattern | undefined): number =>
      pattern === undefined
        ? NaN
        : Math.max(...(lines(pattern, 'fold')[0]?.points ?? []).map(({ x }) => x));
    expect(leftmost(left)).toBeCloseTo(-rightmost(right), 9);
  });

  test('the tightest inside radius of a base is told with its place', () => {
    expect(found(door.patterns, 'door_base_right').drawing.words.join(' ')).toMatch(
      /Tightest inside radius 4 in at/,
    );
  });

  test('no two patterns share a name, and each has words and a line of 100 mm', () => {
    const ids = sedan.patterns.map(({ drawing }) => drawing.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const pattern of sedan.patterns) {
      expect(pattern.drawing.words.length).toBeGreaterThan(0);
      const [scale] = lines(pattern, 'scale');
      const [from, to] = scale?.points ?? [];
      expect((to?.x ?? 0) - (from?.x ?? 0)).toBeCloseTo(100, 9);
    }
  });

  test('other readers find the same areas in SVG and DXF to a ten-thousandth', () => {
    for (const pattern of [...pair.patterns, ...door.patterns]) {
      const svg = readSvgLines(drawingSvg(pattern.drawing)).lines;
      const dxf = readDxfLines(drawingDxf(pattern.drawing)).lines;
      for (const role of ['outline', 'hole'] as const) {
        const expected = lines(pattern, role).map(({ points }) => Math.abs(signedArea(points)));
        const inSvg = svg.filter(({ layer }) => layer === role).map(areaOf);
        const inDxf = dxf.filter(({ layer }) => layer === role.toUpperCase()).map(areaOf);
        for (const [index, one] of expected.entries()) {
          expect((inSvg[index] ?? 0) / one).toBeCloseTo(1, 4);
          expect((inDxf[index] ?? 0) / one).toBeCloseTo(1, 4);
        }
      }
    }
  });
});
