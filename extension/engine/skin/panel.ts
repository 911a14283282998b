import type { Outline, Point } from '../geometry/outline.ts';
import type { PlainShape } from '../geometry/shape.ts';
import type { RingBuild } from '../trade/rings.ts';

/**
 * A ring where it stands on its base, in the panel's frame: x to the rear, y up, z out of the panel,
 * from the base plane (the base's back). Sizes in mm, angles in radians.
 */
export interface PlacedRing {
  readonly id: string;
  readonly build: RingBuild;
  /** Outside of the ring; a shape that is not round lies with its length along the lean. */
  readonly shape: PlainShape;
  readonly centre: Point;
  /** Base plane to the seat of the driver at the ring's centre. */
  readonly depth: number;
  readonly tilt: number;
  /** Direction in which it leans, counter-clockwise from x: its low side lies there. */
  readonly lean: number;
  /** Thickness of the wall. */
  readonly wall: number;
}

/** Something level under the skin or before it: a block that holds the cloth up, a limit to stay below. */
export interface PlacedLevel {
  readonly id: string;
  readonly outline: Outline;
  /** Above the base plane, in mm. */
  readonly height: number;
}

/** A base with all that stands on it, as the skin sees it. */
export interface Panel {
  readonly id: string;
  readonly outline: Outline;
  /** Thickness of the base: where the skin starts, above the base plane. */
  readonly thickness: number;
  readonly rings: readonly PlacedRing[];
  readonly blocks: readonly PlacedLevel[];
  readonly limits: readonly PlacedLevel[];
  /** Thickness of all that lies on the cloth's inside face, in mm, square to it. */
  readonly build: number;
}

/** The direction that "turned from straight up towards the rear" means, counter-clockwise from x. */
export function leanOf(turn: number): number {
  return Math.PI / 2 - turn;
}
