import { describe, expect, test } from 'vitest';
import { planDrawing } from '../../../extension/engine/index.ts';
import { inchBox, linesOf, textsOf } from '../../helpers/marks-of.ts';
import { placedPanel } from '../../helpers/placed-job.ts';

// Geometry: a circle of 7 1/2 in that leans 15° is 7 1/2 in × cos 15° = 7.24444 in along its lean.
const leaning = 7.5 * Math.cos(Math.PI / 12);

describe('planDrawing', () => {
  test('the base is as large as its outline, with what is cut out of it left out', () => {
    const drawing = planDrawing(placedPanel());
    const { left, right, bottom, top } = inchBox(drawing, 'outline');
    expect(right - left).toBeCloseTo(24, 2);
    expect(top - bottom).toBeCloseTo(16, 2);
    expect(linesOf(drawing, 'outline')[0]?.holes).toHaveLength(1);
  });

  test.each([
    ['round_baffle', leaning],
    ['round_tube', 7.5],
    ['square_wall', leaning],
  ])('the lip of a %s is %d in along its lean and 7 1/2 in across', (build, along) => {
    const { left, right, bottom, top } = inchBox(
      planDrawing(placedPanel({ build })),
      'ring',
      'ring',
    );
    expect(right - left).toBeCloseTo(along, 2);
    expect(top - bottom).toBeCloseTo(7.5, 2);
    expect((left + right) / 2).toBeCloseTo(-4, 4);
    expect((top + bottom) / 2).toBeCloseTo(1, 4);
  });

  test('a wall square to its lip stands on the base further to the high side', () => {
    // Geometry: 2 in × tan 15° = 0.535898 in.
    const { left, right } = inchBox(planDrawing(placedPanel({ build: 'square_wall' })), 'part');
    expect((left + right) / 2).toBeCloseTo(-4 - 2 * Math.tan(Math.PI / 12), 3);
  });

  test('the seam is on the high side and the arrow points to the low side', () => {
    const drawing = planDrawing(placedPanel());
    expect(inchBox(drawing, 'seam').right).toBeLessThan(-4);
    const [arrow] = linesOf(drawing, 'aim');
    expect(arrow?.arrow).toBe(true);
    expect((arrow?.points.at(-1)?.x ?? 0) / 25.4).toBeGreaterThan(-4);
    expect((arrow?.points.at(-1)?.y ?? 0) / 25.4).toBeCloseTo(1, 6);
  });

  test.each([
    // The ring leans to the rear about (−4 in, 1 in): straight up is beside its lean, where its lip is not
    // foreshortened; at 45° the lip is an ellipse of 3.75 in × cos 15° to the rear and 3.75 in up.
    ['0 deg', 0, 3.75],
    ['45 deg', 2.606, 2.606],
    ['90 deg', 3.75 * Math.cos(Math.PI / 12), 0],
    ['180 deg', 0, -3.75],
  ])('a seam at %s from straight up crosses the wall there', (seam, x, y) => {
    const drawing = planDrawing(placedPanel({ seam }));
    const [line] = linesOf(drawing, 'seam', 'ring');
    const [out = { x: 0, y: 0 }, inside = out] = (line?.points ?? []).map((point) => ({
      x: point.x / 25.4 + 4,
      y: point.y / 25.4 - 1,
    }));
    // It begins outside the lip and ends inside the wall, on the ray through the place on the lip.
    const [far, at, near] = [out, { x, y }, inside].map((place) => Math.hypot(place.x, place.y));
    expect(far).toBeGreaterThan(at ?? 0);
    expect(near).toBeLessThan(at ?? 0);
    expect(Math.hypot(x, y) - (near ?? 0)).toBeCloseTo(1 / 8, 1);
    expect((out.x * y - out.y * x) / 25).toBeCloseTo(0, 3);
    expect(out.x * x + out.y * y).toBeGreaterThan(0);
    expect(drawing.words[1]).toContain(`and its seam is at ${seam} from straight up.`);
  });

  test('on the left hand a seam towards the rear stands on the other side', () => {
    const seam = inchBox(planDrawing(placedPanel({ seam: '90 deg' }, 'left')), 'seam', 'ring');
    expect(seam.right).toBeLessThan(4);
  });

  test('a ring sliced from a pipe or glued in a stack has no seam', () => {
    const more =
      '\n[[part]]\nid = "stack"\nname = "Stack"\nkind = "stacked_ring"\non = "base"\nsize = "4 in"\ndepth = "2 in"\nat_x = "6 in"\n';
    const drawing = planDrawing(placedPanel({ more }));
    expect(linesOf(drawing, 'seam', 'ring')).toHaveLength(1);
    expect(linesOf(drawing, 'ring', 'stack')).toHaveLength(1);
    expect(linesOf(drawing, 'seam', 'stack')).toHaveLength(0);
  });

  test('the opening lies to the high side of its ring and moves with it', () => {
    const [hole] = linesOf(planDrawing(placedPanel()), 'hole');
    const xs = hole?.points.map(({ x }) => x / 25.4) ?? [];
    expect((Math.min(...xs) + Math.max(...xs)) / 2).toBeLessThan(-4);
    expect(hole?.row?.id).toBe('opening');
    expect(hole?.owner?.id).toBe('ring');
  });

  test('distances are told from edge to edge over the ring’s centre', () => {
    // 24 in wide with the ring 4 in before the middle: 8 in and 16 in; 16 in high, 1 in up: 9 in and 7 in.
    const texts = textsOf(planDrawing(placedPanel()), 'dimension');
    expect(texts.toSorted()).toEqual(['16 in', '16 in', '24 in', '7 in', '8 in', '9 in']);
  });

  test('the left hand is the mirror image, with its words at their places', () => {
    const drawing = planDrawing(placedPanel({}, 'left'));
    const { left, right } = inchBox(drawing, 'ring', 'ring');
    expect((left + right) / 2).toBeCloseTo(4, 4);
    expect(inchBox(drawing, 'seam').left).toBeGreaterThan(4);
    expect(drawing.words[0]).toContain('the rear is on the left');
    expect(drawing.id).toBe('plan_left');
  });

  test('a ring for one hand is not on the other', () => {
    expect(linesOf(planDrawing(placedPanel({ hand: 'left' }, 'right')), 'ring')).toHaveLength(0);
    expect(linesOf(planDrawing(placedPanel({ hand: 'left' }, 'left')), 'ring')).toHaveLength(1);
  });

  test('it says in words what it shows', () => {
    expect(planDrawing(placedPanel()).words).toEqual([
      'Base, seen from the seats: 24 in long and 16 in high; the rear is on the right.',
      'Ring: circle(7 1/2 in), centre 4 in to the front and 1 in up from the base’s zero, 2 1/4 in deep; it leans 15 deg towards 90 deg from straight up, and its seam is on the high side.',
      expect.stringMatching(/^Opening: circle\(.*\), shifted to where the magnet comes through\.$/),
    ]);
  });

  test('rings that do not say where they stand lie side by side, and are told to be dragged', () => {
    const more =
      '\n[[part]]\nid = "second"\nname = "Second"\nkind = "ring"\non = "base"\nsize = "4 in"\ndepth = "2 in"\n';
    const drawing = planDrawing(placedPanel({ unplaced: true, more }));
    const middle = (id: string): number => {
      const { left, right } = inchBox(drawing, 'ring', id);
      return (left + right) / 2;
    };
    // A third and two thirds of 24 in about its middle.
    expect(middle('ring')).toBeCloseTo(-4, 3);
    expect(middle('second')).toBeCloseTo(4, 3);
    expect(textsOf(drawing, 'note')).toContain('Second, not placed');
    expect(textsOf(drawing, 'dimension').toSorted()).toEqual(['16 in', '24 in']);
    expect(drawing.words.join(' ')).toContain('drag it there');
  });

  test('a ring alone on a plain outline stands in its middle', () => {
    const drawing = planDrawing(placedPanel({ unplaced: true }));
    const { left, right } = inchBox(drawing, 'ring', 'ring');
    expect((left + right) / 2).toBeCloseTo(0, 6);
    expect(textsOf(drawing, 'note')).toContain('Ring');
  });

  test('a block and a limit are drawn where they stand, and told apart', () => {
    const level = (id: string): string =>
      `\n[[part]]\nid = "${id}_one"\nname = "${id}"\nkind = "${id}"\non = "base"\nshape = "rect(4 in, 2 in)"\ndepth = "3 in"\nat_x = "8 in"\nat_y = "-5 in"\n`;
    const drawing = planDrawing(placedPanel({ more: level('block') + level('limit') }));
    for (const [role, id] of [
      ['part', 'block_one'],
      ['limit', 'limit_one'],
    ] as const) {
      const { left, right, bottom } = inchBox(drawing, role, id);
      expect([left, right, bottom].map((inches) => Number(inches.toFixed(6)))).toEqual([6, 10, -6]);
    }
    expect(drawing.words).toContain('limit: to stay below 3 in above the base plane.');
  });

  test('a ring without its depth is named as missing', () => {
    const more = '\n[[part]]\nid = "second"\nname = "Second"\nkind = "ring"\non = "base"\n';
    expect(planDrawing(placedPanel({ more })).words.at(-1)).toBe(
      'Second cannot be drawn: its outline, depth or tilt has no answer.',
    );
  });
});
