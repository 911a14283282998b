import { describe, expect, test } from 'vitest';
import { panelFaults } from '../../../extension/engine/skin/panel-problems.ts';
import { inch, panelOf, ringOf, roundrect, type RingInches } from './panels.ts';

const door = roundrect(24, 16, 2);

describe('panelFaults', () => {
  const codes = (rings: readonly RingInches[], base = door): readonly string[] =>
    panelFaults(panelOf(base, rings)).map(({ code }) => code);

  test.each([
    ['a lip over the edge of the base', [{ radius: 3, x: 10, depth: 2 }], 'skin-lip-outside'],
    ['a ring beside its base', [{ radius: 3, x: 30, depth: 2 }], 'skin-lip-outside'],
    ['a low side under the base', [{ radius: 3.75, depth: 0.5, tilt: 20 }], 'skin-low-side'],
    ['a lean of more than 60°', [{ radius: 1, depth: 3, tilt: 61 }], 'skin-tilt-steep'],
    [
      'a square wall that comes out over the edge',
      [{ radius: 3, x: -8.8, depth: 4, tilt: 25, build: 'square_wall' as const }],
      'skin-overhang',
    ],
    [
      'two rings in one place',
      [
        { radius: 3, depth: 2 },
        { radius: 1, x: 3, depth: 2 },
      ],
      'skin-lips-overlap',
    ],
    [
      'one ring inside another',
      [
        { radius: 3, depth: 2 },
        { radius: 1, depth: 2 },
      ],
      'skin-lips-overlap',
    ],
    [
      'two rings that touch',
      [
        { radius: 3, depth: 2 },
        { radius: 1, x: 4.01, depth: 2 },
      ],
      'skin-gap-small',
    ],
    ['a ring that touches the edge', [{ radius: 3, x: 8.99, depth: 2 }], 'skin-gap-small'],
  ])('tells %s', (_, rings, code) => {
    expect(codes(rings)).toEqual([code]);
  });

  test('tells an outline that crosses itself', () => {
    const panel = panelOf(door, []);
    const bow = [
      { x: 0, y: 0 },
      { x: 100, y: 100 },
      { x: 100, y: 0 },
      { x: 0, y: 100 },
    ];
    const crossing = { ...panel, outline: { points: bow, corners: [0, 1, 2, 3] } };
    expect(panelFaults(crossing).map(({ code }) => code)).toEqual(['skin-outline-crosses']);
  });

  test('names the ring and measures by how much', () => {
    const [fault] = panelFaults(panelOf(door, [{ radius: 3, x: 10, depth: 2 }]));
    expect(fault?.row).toBe(ringOf({ radius: 3, depth: 2 }).id);
    expect((fault?.value ?? 0) / inch).toBeCloseTo(1, 1);
  });
});
