import type { Measure } from './amount.ts';

/** What a material must say of itself for one measure of it to be turned into another. Base units. */
export interface Properties {
  /** g/mm³ */
  readonly density?: number;
  /** g/mm² */
  readonly weight?: number;
  /** mm */
  readonly thickness?: number;
  /** mm² that one mm³ covers. */
  readonly coverage?: number;
  /** Width of the bolt, the sheet or the strip, mm. */
  readonly width?: number;
  /** Stock length of a strip, a sheet or a whole roll, mm. */
  readonly length?: number;
}

export type Property = keyof Properties;

/** A way from one measure to another: base × (product of `times`) ÷ (product of `over`). */
interface Way {
  readonly from: Measure;
  readonly to: Measure;
  readonly times: readonly Property[];
  readonly over: readonly Property[];
}

// Coverage stands before thickness: where a maker prints how far a tin goes, that already counts
// what soaks in. A surface's own thickness is what a filler or a sheet fills.
const ways: readonly Way[] = [
  { from: 'mass', to: 'volume', times: [], over: ['density'] },
  { from: 'area', to: 'mass', times: ['weight'], over: [] },
  { from: 'area', to: 'volume', times: [], over: ['coverage'] },
  { from: 'area', to: 'volume', times: ['thickness'], over: [] },
  { from: 'area', to: 'length', times: [], over: ['width'] },
  { from: 'length', to: 'count', times: [], over: ['length'] },
  { from: 'area', to: 'count', times: [], over: ['length', 'width'] },
];

const bothWays: readonly Way[] = ways.flatMap((way) => [
  way,
  { from: way.to, to: way.from, times: way.over, over: way.times },
]);

export type Conversion =
  | {
      readonly ok: true;
      /** Multiplies a base value of the one measure into the other. */
      readonly factor: number;
      /** Properties that were used, in the order of the way. */
      readonly by: readonly Property[];
    }
  | {
      readonly ok: false;
      /** Properties to fill in; empty where no property could help. */
      readonly missing: readonly Property[];
    };

function shortestPath(
  from: Measure,
  to: Measure,
  usable: (way: Way) => boolean,
): readonly Way[] | undefined {
  let paths: (readonly [Measure, readonly Way[]])[] = [[from, []]];
  const seen = new Set<Measure>([from]);
  while (paths.length > 0) {
    const arrived = paths.find(([measure]) => measure === to);
    if (arrived !== undefined) return arrived[1];
    paths = paths.flatMap(([measure, path]) =>
      bothWays
        .filter((way) => way.from === measure && usable(way) && !seen.has(way.to))
        .map((way) => {
          seen.add(way.to);
          return [way.to, [...path, way]] as const;
        }),
    );
  }
  return undefined;
}

/**
 * How an amount of a material is turned from one measure into another by the properties it has:
 * mass ↔ volume by density, area ↔ mass by weight, area ↔ volume by coverage or thickness,
 * area ↔ length by width, length ↔ pieces by stock length, sheets ↔ area by length and width.
 *
 * @returns the shortest way, or the properties that are missing on the way with the fewest
 */
export function conversion(from: Measure, to: Measure, properties: Properties): Conversion {
  const has = (property: Property): boolean => (properties[property] ?? 0) > 0;
  const path = shortestPath(from, to, ({ times, over }) => [...times, ...over].every(has));
  if (path === undefined) {
    const wished = shortestPath(from, to, () => true) ?? [];
    const needed = wished.flatMap(({ times, over }) => [...times, ...over]);
    return { ok: false, missing: needed.filter((property) => !has(property)) };
  }
  const product = (list: readonly Property[]): number =>
    list.reduce((result, property) => result * (properties[property] ?? 1), 1);
  return {
    ok: true,
    factor: path.reduce((factor, { times, over }) => (factor * product(times)) / product(over), 1),
    by: path.flatMap(({ times, over }) => [...times, ...over]),
  };
}
