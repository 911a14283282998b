import type { BoltInstance, Part, Placement } from '../instance.ts';
import type { LaidPanel, Panel, Roll } from './skyline.ts';

/** Cloth is reckoned in whole thousandths of a millimetre. */
export const fine = 1000;

/** A length in whole thousandths of a millimetre. */
export function whole(mm: number): number {
  return Math.round(mm * fine);
}

interface Owner {
  readonly part: Part;
  /** The panel is the part turned by a quarter. */
  readonly quarter: boolean;
}

export interface Cloth {
  readonly panels: readonly Panel[];
  readonly owners: readonly Owner[];
  readonly unfit: readonly Part[];
}

const everyWay = [0, 90, 180, 270];

function lies(part: Part, quarter: 0 | 90): boolean {
  return (part.rotations ?? everyWay).some((turn) => Math.abs(turn % 180) === quarter);
}

/** The panels that parts come to, each with the part it is one of. */
export function clothOf({ parts, kerf = 0 }: BoltInstance, roll: Roll): Cloth {
  const panels: Panel[] = [];
  const owners: Owner[] = [];
  const unfit: Part[] = [];
  for (const part of parts) {
    const [length, width] = [whole(part.length + kerf), whole(part.width + kerf)];
    const straight = lies(part, 0) && width <= roll.width;
    const turned = lies(part, 90) && length <= roll.width;
    const [along, across] = straight ? [length, width] : [width, length];
    const turns = straight && turned && length !== width;
    for (let count = 0; count < part.count; count++) {
      if (!straight && !turned) {
        unfit.push(part);
        continue;
      }
      panels.push({ index: panels.length, along, across, turns });
      owners.push({ part, quarter: !straight });
    }
  }
  return { panels, owners, unfit };
}

/** Where the part of a laid panel lies, in mm. */
export function clothPlacement(
  { x, y, turned }: LaidPanel,
  owner: Owner,
  roll: { readonly stock: string; readonly trim: number },
): Placement {
  const { part } = owner;
  const across = turned !== owner.quarter;
  const quarter = across ? 90 : 0;
  const ways = part.rotations ?? everyWay;
  return {
    part: part.id,
    stock: roll.stock,
    index: 0,
    x: x / fine,
    y: y / fine + roll.trim,
    rotation: ways.find((turn) => Math.abs(turn % 180) === quarter) ?? 0,
    mirrored: false,
    length: across ? part.width : part.length,
    width: across ? part.length : part.width,
  };
}
