import { describe, expect, test } from 'vitest';
import { openSession, settleNow } from '../../extension/engine/index.ts';

/*
 * By geometry: the stretched skin through formulas of a job, against closed forms. A round ring in the middle of a
 * round base is Euler's catenoid: for an edge of 8 in and a lip of 3 3/4 in, 2 in higher, the surface
 * is 172.5075 sq in, the space under it with its lid 202.4635 cu in (c·A/2), and at the lip it rises
 * 0.80263 in an inch. Fleece and mat: LAMINATE.THICKNESS and the book's own skin.
 */
const inch = 25.4;

function job(rows: string, formula: string): string {
  return `format = 1

[job]
title = "Held to closed forms"
units = "in"
currency = "USD"

[[part]]
id = "base"
kind = "base"
shape = "circle(16 in)"
thickness = "0.25 in"

[[part]]
id = "ring"
kind = "ring"
on = "base"
size = "7.5 in"
depth = "2.25 in"
at_x = "0 in"
at_y = "0 in"

${rows}

[[measure]]
id = "answer"
value = "${formula}"
`;
}

function answer(formula: string, rows = ''): number | string {
  const session = openSession(job(rows, formula));
  settleNow(session);
  const result = session.snapshot().workbook.row('measure', 'answer')?.cell('value').result;
  if (result?.state !== 'value') return JSON.stringify(result);
  const { value } = result;
  return value.kind === 'quantity' ? value.base : value.kind === 'text' ? value.text : value.kind;
}

function off(formula: string, exact: number, rows = ''): number {
  return Math.abs(Number(answer(formula, rows)) / exact - 1);
}

// The strip of 1/8 in that the ring is bent from shows as its edge.
const edge = Math.PI * (3.75 ** 2 - 3.625 ** 2);

describe('a round ring in the middle of a round base', () => {
  test('SKIN.AREA is the catenoid and the edge of the ring', () => {
    expect(off('=SKIN.AREA(base)', (172.5074909837 + edge) * inch ** 2)).toBeLessThan(3e-4);
  });

  test('SKIN.CLOTH is the catenoid and the lid', () => {
    const exact = (172.5074909837 + Math.PI * 3.75 ** 2) * inch ** 2;
    expect(off('=SKIN.CLOTH(base)', exact)).toBeLessThan(3e-4);
  });

  test('SKIN.VOLUME is c·A/2', () => {
    expect(off('=SKIN.VOLUME(base)', 202.4635463925 * inch ** 3)).toBeLessThan(2e-3);
  });

  test('SKIN.SLOPE comes near the slope at the lip', () => {
    expect(off('=SKIN.SLOPE(base)', Math.atan(0.8026345965))).toBeLessThan(0.06);
  });

  test('SKIN.BLANKLENGTH and SKIN.BLANKWIDTH are alike and between the base and a straight pull', () => {
    const [along, across] = [answer('=SKIN.BLANKLENGTH(base)'), answer('=SKIN.BLANKWIDTH(base)')];
    expect(Number(along) / Number(across)).toBeCloseTo(1, 2);
    expect(Number(along) / inch).toBeGreaterThan(16);
    expect(Number(along) / inch).toBeLessThan(16 + 2 * (Math.hypot(4.25, 2) - 4.25));
  });

  test('SKIN.STRETCH is more than nothing and less than the straight pull over the lip', () => {
    const stretch = Number(answer('=SKIN.STRETCH(base)'));
    expect(stretch).toBeGreaterThan(1.02);
    expect(stretch).toBeLessThan(Math.hypot(1, 0.8026345965));
  });

  test('SKIN.CLEARANCE under a level plane 3 in from the back is 3/4 in', () => {
    expect(off('=SKIN.CLEARANCE(base, circle(16in), 3in)', 0.75 * inch)).toBeLessThan(1e-3);
  });

  test('SKIN.CONTACT is empty where the surface leaves the lip freely, and not above r·acosh(R/r)', () => {
    expect(answer('=SKIN.CONTACT(base)')).toBe('{"state":"blank"}');
  });

  test('SKIN.THICKNESS is cloth and mat, as LAMINATE.THICKNESS has it', () => {
    const rows =
      '[[part]]\nid = "skin"\nkind = "skin"\non = "base"\nthickness = "2 mm"\n\n[[part]]\nid = "mat"\nkind = "mat"\non = "skin"\nlayers = 2\n';
    const mat = Number(answer('=mat.cured_thickness', rows));
    expect(answer('=SKIN.THICKNESS(base)', rows)).toBeCloseTo(2 + mat, 9);
  });
});

describe('free outlines', () => {
  // Shoelace: a right triangle of 12 and 16 in, 96 sq in, 48 in round.
  test('polygon( ) has the area of its corners', () => {
    const triangle = 'polygon(0in, 0in, 16in, 0in, 0in, 12in)';
    expect(answer(`=SHAPE.AREA(${triangle})`)).toBeCloseTo(96 * inch ** 2, 6);
    expect(answer(`=SHAPE.PERIMETER(${triangle})`)).toBeCloseTo(48 * inch, 9);
  });

  test('path( ) has the area that its drawing says', () => {
    const drawing =
      '<svg width="100mm" height="50mm" viewBox="0 0 100 50"><rect id="plate" width="100" height="50"/></svg>';
    const text = job('', "=SHAPE.AREA(path('plate.svg#plate'))").replaceAll("'", '\\"');
    const session = openSession(text, undefined, new Map([['plate.svg', drawing]]));
    const result = session.snapshot().workbook.row('measure', 'answer')?.cell('value').result;
    expect(result).toMatchObject({ value: { base: 5000 } });
  });
});
