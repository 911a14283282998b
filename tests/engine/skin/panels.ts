import type { PlacedRing, Panel } from '../../../extension/engine/skin/panel.ts';
import type { Point } from '../../../extension/engine/geometry/outline.ts';
import { shapeOutline } from '../../../extension/engine/geometry/shape-outline.ts';
import type { RingBuild } from '../../../extension/engine/trade/rings.ts';
import type { Shape } from '../../../extension/engine/geometry/shape.ts';

export const inch = 25.4;
export const degree = Math.PI / 180;

/** A round ring in inches and degrees. */
export interface RingInches {
  readonly radius: number;
  readonly x?: number;
  readonly y?: number;
  readonly depth: number;
  readonly tilt?: number;
  readonly lean?: number;
  readonly build?: RingBuild;
}

export function ringOf(ring: RingInches, index = 0): PlacedRing {
  const { radius, x = 0, y = 0, depth, tilt = 0, lean = 0, build = 'round_baffle' } = ring;
  return {
    id: `ring_${String(index + 1)}`,
    build,
    shape: { kind: 'circle', diameter: 2 * radius * inch },
    centre: { x: x * inch, y: y * inch },
    depth: depth * inch,
    tilt: tilt * degree,
    lean: lean * degree,
    wall: 0.125 * inch,
  };
}

/** A panel whose base has no thickness, so that depths are heights of the skin. */
export function panelOf(shape: Shape, rings: readonly RingInches[]): Panel {
  return {
    id: 'base',
    outline: shapeOutline(shape, 1e-4),
    thickness: 0,
    rings: rings.map(ringOf),
    blocks: [],
    limits: [],
    build: 0,
  };
}

/** A base with round corners, in inches. */
export function roundrect(length: number, width: number, radius: number): Shape {
  return { kind: 'roundrect', length: length * inch, width: width * inch, radius: radius * inch };
}

/** A round base, by its radius in inches. */
export function disc(radius: number): Shape {
  return { kind: 'circle', diameter: 2 * radius * inch };
}

/** Points of a curve t → (x, y) for t from 0 to 1, its end left out. */
export function curve(at: (t: number) => Point, pieces: number): readonly Point[] {
  return Array.from({ length: pieces }, (_, index) => at(index / pieces));
}
