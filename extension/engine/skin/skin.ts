import { shapeArea } from '../geometry/shape.ts';
import type { Panel } from './panel.ts';
import { insideWall } from './ring-plan.ts';

/** What is known of a skin stretched over a panel. Lengths in mm, areas in mm², volumes in mm³. */
export interface SkinFigures {
  /** Area of base that the skin stands over: the outline less what the lips hide. */
  readonly plan: number;
  /** The skin from the outline to the lips. */
  readonly skin: number;
  /** By how much that area may be off. */
  readonly skinError: number;
  /** Edges of the rings that show: what lies between a lip and its mouth. */
  readonly faces: number;
  /** Lids over the lips, before they are cut open. */
  readonly lids: number;
  /** Between the base's front and the skin with its lids. */
  readonly volume: number;
  /** Steepest slope of the skin, in radians. */
  readonly slope: number;
  /** Largest stretch of the blank over its smallest; 1 where it lies flat. */
  readonly stretch: number;
  /** Smallest blank along x and along y, without allowances. */
  readonly blankLength: number;
  readonly blankWidth: number;
  /** Least room to a limit over the finished surface; Infinity where there is none. */
  readonly clearance: number;
  /** Rings against whose wall the cloth lies, with the length of lip along which it does. */
  readonly hugs: readonly { readonly ring: string; readonly length: number }[];
  /** Rings and blocks that the cloth bears on under their lip. */
  readonly bears: readonly string[];
  /** Limit that is nearest or broken. */
  readonly limit: string;
}

/** Six significant digits: what two machines agree on whatever their last bits are. */
export function rounded(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(6)) : value;
}

/** Area of what is left of the lips between outside and mouth, and of the lids over them. */
export function lipAreas(panel: Panel): { readonly faces: number; readonly lids: number } {
  let [faces, lids] = [0, 0];
  for (const { shape, wall, build, tilt } of panel.rings) {
    const slant = build === 'round_tube' ? 1 / Math.cos(tilt) : 1;
    const mouth = insideWall(shape, wall);
    lids += shapeArea(shape) * slant;
    faces += (shapeArea(shape) - (mouth === undefined ? 0 : shapeArea(mouth))) * slant;
  }
  return { faces, lids };
}
