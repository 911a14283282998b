import { describe, expect, test } from 'vitest';
import { signedArea } from '../../../extension/engine/geometry/outline.ts';
import { closedFigures } from '../../../extension/engine/skin/closed-form.ts';
import { settleSkin } from '../../../extension/engine/skin/settle.ts';
import { panelOf, roundrect, type RingInches } from './panels.ts';

const door = roundrect(24, 16, 2);

/** A midbass and a tweeter at one depth and tilt, leaning along x. */
function pair(depth: number, tilt: number): readonly RingInches[] {
  return [
    { radius: 3.75, x: -4.5, y: 0, depth, tilt },
    { radius: 1.25, x: 6.5, y: 2.5, depth, tilt },
  ];
}

describe('closedFigures', () => {
  test('is within 2 % of the mesh on doors, and at the same area without tilt or rings', () => {
    for (const [depth, tilt] of [
      [1, 0],
      [1.5, 10],
      [2, 15],
      [3, 15],
    ] as const) {
      const panel = panelOf(door, pair(depth, tilt));
      expect(
        Math.abs(
          closedFigures(panel).skin /
            settleSkin(panel, { triangles: 2000, blank: false }).figures.skin -
            1,
        ),
      ).toBeLessThan(0.02);
    }
    const flat = panelOf(door, []);
    expect(closedFigures(flat).skin).toBeCloseTo(signedArea(flat.outline.points), 6);
  });

  test('says how far it may be off: more where a ring stands near an edge', () => {
    const open = closedFigures(panelOf(door, pair(2, 15)));
    const tight = closedFigures(
      panelOf(roundrect(10, 9, 1.5), [{ radius: 3.75, depth: 4, tilt: 25 }]),
    );
    expect(open.skinError / open.skin).toBeCloseTo(0.02, 9);
    expect(tight.skinError / tight.skin).toBeCloseTo(0.12, 9);
  });
});
