import { describe, expect, test } from 'vitest';
import {
  shapeInsideRadius,
  tightestInsideRadius,
} from '../../../extension/engine/geometry/inside-radius.ts';
import { outlineOffset } from '../../../extension/engine/geometry/outline-offset.ts';
import { soundOutline } from '../../../extension/engine/geometry/sound-outline.ts';
import type { Outline } from '../../../extension/engine/geometry/outline.ts';

function outlineOf(...points: readonly (readonly [number, number])[]): Outline {
  const sound = soundOutline(points.map(([x, y]) => ({ x, y })));
  if ('kind' in sound) throw new Error(sound.kind);
  return sound;
}

const hook = outlineOf([0, 0], [200, 0], [200, 80], [100, 80], [100, 140], [0, 140]);

describe('tightestInsideRadius', () => {
  test('a corner that turns inwards is sharp, and told with its place', () => {
    expect(tightestInsideRadius(hook)).toEqual({ radius: 0, at: { x: 100, y: 80 } });
  });

  test('an outline that bulges only has none from outside', () => {
    expect(tightestInsideRadius(outlineOf([0, 0], [100, 0], [50, 80]))).toBeUndefined();
  });

  // Out by 12 and in again by 12, the corner inwards is left with a radius of 12.
  test('a hollow that was rounded has the radius it was rounded with', () => {
    const [out = hook] = outlineOffset(hook, 12).outlines;
    const [eased = hook] = outlineOffset(out, -12).outlines;
    const tight = tightestInsideRadius(eased);
    expect((tight?.radius ?? 0) / 12).toBeCloseTo(1, 1);
    expect(tight?.at.x).toBeGreaterThan(100);
    expect(tight?.at.y).toBeGreaterThan(80);
  });

  test('inside an opening the corners that bulge are the tight ones', () => {
    const rect = { kind: 'rect', length: 60, width: 40 } as const;
    expect(shapeInsideRadius(rect, 'inside')?.radius).toBe(0);
    expect(shapeInsideRadius(rect, 'outside')).toBeUndefined();
    const round = { kind: 'roundrect', length: 60, width: 40, radius: 6 } as const;
    expect(shapeInsideRadius(round, 'inside')?.radius).toBe(6);
    expect(shapeInsideRadius({ kind: 'circle', diameter: 50 }, 'inside')?.radius).toBe(25);
    // Radius of curvature at the ends of an ellipse: b² / a = 20² / 30.
    const oval = shapeInsideRadius({ kind: 'oval', length: 60, width: 40 }, 'inside');
    expect((oval?.radius ?? 0) / (400 / 30)).toBeCloseTo(1, 2);
  });
});
