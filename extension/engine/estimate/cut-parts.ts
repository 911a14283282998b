import type { Part, Rotation } from '../cutting/instance.ts';
import type { TaperedPair } from '../cutting/strips/tapered-pair.ts';
import { crc32 } from '../job/crc32.ts';
import { differingPlaces, renewedList } from '../units/renewed-list.ts';
import type { Owner } from './cut-layout.ts';
import type { MaterialFacts } from './material.ts';
import type { Asked } from './need.ts';
import { ringPair } from './ring-pair.ts';
import { pieceOfStrip } from './strip-piece.ts';

interface Size {
  readonly length: number;
  readonly width: number;
  readonly count: number;
  /** Each is two strips of the row. */
  readonly pair?: TaperedPair;
}

/** Pieces of one size that a row asks for, as they are cut. */
export interface Piece {
  readonly pair: TaperedPair | undefined;
  readonly kinds: readonly KindOfPart[];
}

/** Sizes are told apart to a hundredth of a millimetre: no saw is set finer. */
function rounded(mm: number): number {
  return Math.round(mm * 100) / 100;
}

/** Pieces that each of some rows asks for. */
export type Wanted = readonly (readonly Piece[])[];

interface OfRow {
  readonly material: MaterialFacts;
  readonly pieces: readonly Piece[];
}

interface OfRows {
  readonly rows: readonly Asked[];
  readonly wanted: Wanted;
}

/** What was wanted last, by a row and by all rows of a material: most of them ask for the same again. */
interface Known {
  readonly ofRow: WeakMap<Asked, OfRow>;
  readonly ofRows: WeakMap<MaterialFacts, OfRows>;
}

const single: Known = { ofRow: new WeakMap(), ofRows: new WeakMap() };
const paired: Known = { ofRow: new WeakMap(), ofRows: new WeakMap() };

/** Pieces that each row of a material asks for; tapered strips two by two where `pairs` says so. */
export function wantedPieces(
  material: MaterialFacts,
  rows: readonly Asked[],
  pairs: boolean,
): Wanted {
  const { ofRow, ofRows } = pairs ? paired : single;
  const of = (asked: Asked): readonly Piece[] => {
    const known = ofRow.get(asked);
    if (known?.material === material) return known.pieces;
    const pieces = piecesOf(material, asked, pairs);
    ofRow.set(asked, { material, pieces });
    return pieces;
  };
  const wanted = renewed(ofRows.get(material), rows, of) ?? rows.map(of);
  ofRows.set(material, { rows, wanted });
  return wanted;
}

/** The same list but for rows that ask for something else; undefined where there are more or fewer of them. */
function renewed(
  last: OfRows | undefined,
  rows: readonly Asked[],
  of: (asked: Asked) => readonly Piece[],
): Wanted | undefined {
  const places = last && differingPlaces(last.rows, rows);
  if (places === undefined) return undefined;
  const fresh = new Map<number, readonly Piece[]>();
  for (const place of places) {
    const asked = rows[place];
    if (asked !== undefined) fresh.set(place, of(asked));
  }
  return fresh.size === 0 ? last?.wanted : renewedList(last?.wanted ?? [], fresh);
}

function piecesOf(material: MaterialFacts, asked: Asked, pairs: boolean): readonly Piece[] {
  return sizesOf(material, asked, pairs).map((size): Piece => {
    return { pair: size.pair, kinds: kindsOfPart(asked, size) };
  });
}

function sizesOf(material: MaterialFacts, asked: Asked, pairs: boolean): readonly Size[] {
  if (material.form === 'sheet' || material.form === 'roll') {
    const { leaning, blank } = asked;
    if (blank === undefined) return [];
    const pair = pairs && leaning !== undefined ? ringPair(leaning) : undefined;
    if (pair === undefined) return [blank];
    const count = Math.floor(blank.count / 2);
    const { length, width } = pair;
    return [
      { ...blank, count: blank.count - 2 * count },
      { length, width, count, pair },
    ];
  }
  if (material.form !== 'strip' || material.properties.length === undefined) return [];
  const piece = pieceOfStrip(asked);
  return piece === undefined ? [] : [piece];
}

/** What is to be cut, whoever asks for it. */
export interface PartsWanted {
  readonly parts: readonly Part[];
  /** Parts that are mirror images of a row's outline. */
  readonly mirrored: ReadonlySet<string>;
  readonly pairs: ReadonlyMap<string, TaperedPair>;
}

/** Pieces of one size put together as one part, the longest first. */
export function partsOf(wanted: Wanted, rotations: readonly Rotation[] | undefined): PartsWanted {
  const found = new Map<string, { readonly kind: KindOfPart; count: number }>();
  const mirrored = new Set<string>();
  const pairs = new Map<string, TaperedPair>();
  const add = (kind: KindOfPart, pair: TaperedPair | undefined): void => {
    if (kind.mirror) mirrored.add(kind.id);
    if (pair !== undefined) pairs.set(kind.id, pair);
    const known = found.get(kind.id);
    if (known === undefined) found.set(kind.id, { kind, count: kind.count });
    else known.count += kind.count;
  };
  for (const pieces of wanted) {
    for (const { pair, kinds } of pieces) for (const kind of kinds) add(kind, pair);
  }
  const turned = rotations === undefined ? {} : { rotations };
  const parts = Array.from(found.values(), ({ kind: { mirror: _, ...one }, count }): Part => {
    return { ...one, count, ...turned };
  });
  return { parts: parts.sort((a, b) => b.length - a.length || b.width - a.width), mirrored, pairs };
}

/** Rows that ask for each part, with how many; `wanted` is what each of them wants. */
export function ownersOf(
  rows: readonly Asked[],
  wanted: Wanted,
): ReadonlyMap<string, readonly Owner[]> {
  const owners = new Map<string, Owner[]>();
  rows.forEach(({ table, row, occurrence }, index) => {
    for (const { id, count } of wanted[index]?.flatMap(({ kinds }) => kinds) ?? []) {
      const owner = { table, row, occurrence, count };
      const known = owners.get(id);
      if (known === undefined) owners.set(id, [owner]);
      else known.push(owner);
    }
  });
  return owners;
}

/** The part that a row asks for, and its mirror image; by the row's id. */
export function partNames(
  rows: readonly Asked[],
  wanted: Wanted,
): {
  readonly plain: ReadonlyMap<string, string>;
  readonly mirrored: ReadonlyMap<string, string>;
} {
  const [plain, mirrored] = [new Map<string, string>(), new Map<string, string>()];
  rows.forEach(({ row }, index) => {
    const kinds = wanted[index]?.flatMap((piece) => piece.kinds) ?? [];
    for (const { id, mirror } of kinds) (mirror ? mirrored : plain).set(row, id);
  });
  return { plain, mirrored };
}

type Loop = readonly (readonly [number, number])[];

function roundedLoop(loop: Loop): Loop {
  return loop.map(([x, y]) => [rounded(x), rounded(y)]);
}

interface KindOfPart extends Part {
  readonly mirror: boolean;
}

const divisions = new WeakMap<TaperedPair, string>();

/** Pairs of one size may be divided differently: a word that tells them apart. */
function divisionOf(pair: TaperedPair): string {
  const known = divisions.get(pair) ?? crc32(JSON.stringify(pair.highSeam)).toString(36);
  divisions.set(pair, known);
  return known;
}

/** The piece as it is cut: its blank, or its outline and the mirror image of that. */
function kindsOfPart(asked: Asked, size: Size): readonly KindOfPart[] {
  if (size.count <= 0) return [];
  const [length, width] = [rounded(size.length), rounded(size.width)];
  const { pair } = size;
  const box = width === 0 ? `${length}` : `${length} × ${width}`;
  const id = pair === undefined ? box : `${box} ${divisionOf(pair)}`;
  const { outline } = asked;
  if (outline === undefined) return [{ id, length, width, count: size.count, mirror: false }];
  const points = roundedLoop(outline.points);
  const holes = outline.holes.map(roundedLoop);
  const mirrored = Math.min(outline.mirrored, size.count);
  const as = (
    count: number,
    { own, open }: { readonly own: Loop; readonly open: readonly Loop[] },
    mirror: boolean,
  ): readonly KindOfPart[] =>
    count === 0
      ? []
      : [
          {
            ...boxOf(own),
            id: `${id} ${crc32(JSON.stringify(open.length === 0 ? own : [own, open])).toString(36)}`,
            count,
            points: own,
            ...(open.length === 0 ? {} : { holes: open }),
            mirror,
          },
        ];
  const flipped = (loop: Loop): Loop => loop.map(([x, y]) => [-x, y] as const).reverse();
  const mirror = { own: flipped(points), open: holes.map(flipped) };
  return [
    ...as(size.count - mirrored, { own: points, open: holes }, false),
    ...as(mirrored, mirror, true),
  ];
}

function boxOf(points: readonly (readonly [number, number])[]): { length: number; width: number } {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    length: rounded(Math.max(...xs) - Math.min(...xs)),
    width: rounded(Math.max(...ys) - Math.min(...ys)),
  };
}
