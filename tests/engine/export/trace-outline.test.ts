import { describe, expect, test } from 'vitest';
import { traceOutline } from '../../../extension/engine/export/trace-outline.ts';
import { openOutlineFiles } from '../../../extension/engine/geometry/outline-files.ts';
import { signedArea } from '../../../extension/engine/geometry/outline.ts';

const settings = { units: 'mm', currency: 'EUR' } as const;

function made(list: string, smooth = false) {
  const answer = traceOutline(list, { mode: 'points', smooth, title: 'Kick & panel', settings });
  if (!answer.ok) throw new Error(answer.problem.message);
  return answer.value;
}

function readBack(svg: string) {
  const files = openOutlineFiles(new Map([['kick.svg', svg]]));
  const answer = files.source({ address: 'kick.svg#edge', unit: undefined, settings });
  if (!answer.ok) throw new Error(answer.problem.message);
  return answer.value;
}

const pasted = '-40, -10, corner\n260, 0, corner\n280, 120\n150, 190\n-20, 140';

describe('traceOutline', () => {
  test('the file reads back as the outline that was shown, about the zero that was measured from', () => {
    for (const smooth of [false, true]) {
      const { svg, drawing } = made(pasted, smooth);
      const shown = drawing.marks.find(({ role }) => role === 'outline');
      const area = shown?.kind === 'line' ? signedArea(shown.points) : NaN;
      const outline = readBack(svg);
      expect(outline.area / area).toBeCloseTo(1, 4);
      expect(outline.box.left).toBeCloseTo(drawing.box.left, 2);
      expect(outline.box.bottom).toBeCloseTo(drawing.box.bottom, 2);
      expect(outline.box.top).toBeCloseTo(drawing.box.top, 2);
    }
  });

  test('curves are written as curves, straight pieces as lines', () => {
    expect(made(pasted).svg).not.toMatch(/d="[^"]*C/);
    expect(made(pasted, true).svg).toMatch(/d="M[^"]*L[^"]*C/);
    expect(made(pasted).svg).toContain('<title>Kick &amp; panel</title>');
  });

  test('its sentence tells size, area, length and how many points', () => {
    expect(made('0, 0\n300, 0\n300, 200\n0, 200').sentence).toBe(
      '300 mm × 200 mm, 0.06 m2 inside, 1000 mm round, from 4 points.',
    );
  });

  test('every measured point is marked', () => {
    expect(made(pasted).drawing.marks.filter(({ role }) => role === 'axis')).toHaveLength(5);
  });
});
