import { describe, expect, test } from 'vitest';
import { openOutlineFiles } from '../../../extension/engine/geometry/outline-files.ts';
import { readSvg } from '../../../extension/engine/geometry/svg-file.ts';
import type { TracedOutline } from '../../../extension/engine/geometry/traced-outline.ts';

const settings = { units: 'mm', currency: 'EUR' } as const;

function outline(body: string, root = 'width="400mm" height="300mm" viewBox="0 0 400 300"') {
  const text = `<?xml version="1.0"?>\n<svg xmlns="http://www.w3.org/2000/svg" ${root}>${body}</svg>`;
  const files = openOutlineFiles(new Map([['a.svg', text]]));
  return files.source({ address: 'a.svg', unit: undefined, settings });
}

function found(body: string, root?: string): TracedOutline {
  const answer = outline(body, root);
  if (!answer.ok) throw new Error(answer.problem.message);
  return answer.value;
}

function near(one: number, other: number): number {
  return Math.abs(one / other - 1);
}

describe('readSvg', () => {
  test('a rectangle stands as high above the lower edge of the page as it is drawn', () => {
    const { box, area, corners } = found('<rect x="10" y="20" width="200" height="100"/>');
    expect(box).toEqual({ left: 10, right: 210, bottom: 180, top: 280 });
    expect(area).toBeCloseTo(20_000, 9);
    expect(corners).toHaveLength(4);
  });

  test.each([
    ['<circle cx="200" cy="150" r="100"/>', Math.PI * 100 ** 2],
    ['<ellipse cx="200" cy="150" rx="120" ry="60"/>', Math.PI * 120 * 60],
    ['<rect width="200" height="100" rx="20"/>', 20_000 - (4 - Math.PI) * 400],
    ['<rect width="200" height="100" rx="20" ry="30"/>', 20_000 - (4 - Math.PI) * 600],
    ['<polygon points="0,0 200,0 200,100"/>', 10_000],
    ['<path d="M100 50a50 50 0 1 0 100 0a50 50 0 1 0-100 0z"/>', Math.PI * 2500],
    // A parabola and its chord enclose two thirds of their rectangle.
    ['<path d="M0 0Q50 100 100 0Z"/>', (2 / 3) * 100 * 50],
    // Cubic with handles at a third of the way up: 3/20 of the boxes its ends and handles span.
    ['<path d="M0 0C0 100 100 100 100 0Z"/>', (3 / 5) * 100 * 100],
    ['<path d="M0 0h100v50s0 50-100 0z"/>', undefined],
  ])('%s encloses %d', (body, area) => {
    const { area: measured } = found(body);
    if (area === undefined) expect(measured).toBeGreaterThan(1000);
    else expect(near(measured, area)).toBeLessThan(5e-5);
  });

  test('points on a circle lie on it, and its straight pieces stray less than a hundredth', () => {
    const { points } = found('<circle cx="200" cy="150" r="100"/>');
    for (const [index, point] of points.entries()) {
      const next = points[(index + 1) % points.length] ?? point;
      expect(Math.hypot(point.x - 200, point.y - 150)).toBeCloseTo(100, 6);
      const middle = Math.hypot((point.x + next.x) / 2 - 200, (point.y + next.y) / 2 - 150);
      expect(100 - middle).toBeLessThan(0.01);
    }
  });

  test('transforms of groups reach what is in them, the outermost last', () => {
    const turned =
      '<g transform="translate(100 50)"><g transform="rotate(90)"><rect width="40" height="20"/></g></g>';
    const { box } = found(turned);
    expect(box.left).toBeCloseTo(80, 9);
    expect(box.right).toBeCloseTo(100, 9);
    expect(box.top).toBeCloseTo(250, 9);
    expect(box.bottom).toBeCloseTo(210, 9);
    const squeezed = found('<g transform="scale(2 0.5)"><circle cx="50" cy="50" r="40"/></g>');
    expect(near(squeezed.area, Math.PI * 1600)).toBeLessThan(5e-5);
  });

  test.each([
    ['width="4in" viewBox="0 0 400 300"', 0.254],
    ['width="40cm" viewBox="0 0 400 300"', 1],
    ['height="300mm" viewBox="0 0 400 300"', 1],
    ['width="100mm"', 25.4 / 96],
    ['width="400" height="300" viewBox="0 0 400 300"', undefined],
    ['width="400px" height="300px"', undefined],
    ['viewBox="0 0 400 300"', undefined],
  ])('the unit of a page with %s is %s mm', (root, unit) => {
    const read = readSvg(`<svg ${root}><rect width="10" height="10"/></svg>`);
    expect(typeof read === 'string' ? read : read.unit).toBe(unit);
  });

  test('what is not drawn is passed over: definitions, hidden things, text', () => {
    const body =
      '<defs><rect width="9" height="9"/></defs><g style="display:none"><circle r="9"/></g>' +
      '<text>door</text><rect width="50" height="20"/>';
    expect(found(body).area).toBeCloseTo(1000, 9);
    const read = readSvg(`<svg>${body}</svg>`);
    expect(typeof read === 'string' ? read : read.unread).toEqual(['text']);
  });

  test.each([
    ['<html/>', 'it is no SVG'],
    ['not xml', 'cannot be'],
    ['<svg><rect></svg>', 'Missing end tag'],
  ])('%s is told to be no drawing', (text, reason) => {
    const read = readSvg(text);
    expect(typeof read).toBe('string');
    if (reason !== 'cannot be') expect(read).toMatch(new RegExp(reason, 'i'));
  });

  test('a path that breaks off says so', () => {
    const read = readSvg('<svg><path id="edge" d="M0 0L10"/></svg>');
    expect(read).toMatch(/the path edge cannot be followed/);
  });
});
