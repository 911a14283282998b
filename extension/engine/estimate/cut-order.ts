import type { CutInstance, Part, Rotation, Stock } from '../cutting/instance.ts';
import { firstTier } from '../cutting/settled-layout.ts';
import type { HeavyQuestion } from '../formula/catalogue.ts';
import { crc32 } from '../job/crc32.ts';
import { wordIn } from './cells.ts';
import type { CutOrder, Owner } from './cut-layout.ts';
import type { MaterialFacts } from './material.ts';
import type { Asked } from './need.ts';
import { weighedPrice, type PackFacts } from './pack.ts';
import { pieceOfStrip } from './strip-piece.ts';

interface Wanted {
  readonly asked: Asked;
  readonly length: number;
  readonly width: number;
  readonly count: number;
}

/** Sizes are told apart to a hundredth of a millimetre: no saw is set finer. */
function rounded(mm: number): number {
  return Math.round(mm * 100) / 100;
}

/**
 * The layout that a material needs for what its rows ask; undefined where nothing is cut from whole
 * stock. Pieces of one size are one part whoever asks for them, so that a layout depends on sizes
 * alone.
 */
export function cutOrder(material: MaterialFacts, rows: readonly Asked[]): CutOrder | undefined {
  const wanted = wantedPieces(material, rows);
  const stocks = stocksOf(material);
  if (wanted.length === 0 || stocks.length === 0) return undefined;
  const { parts, owners } = partsOf(wanted, material);
  const { kerf, trim, method, repeat, lap, search } = material.cutting;
  const common = {
    stocks,
    parts,
    kerf,
    trim,
    ...(search === 'long' ? { effort: 'long' as const } : {}),
  };
  const instance: CutInstance =
    material.form === 'roll'
      ? { kind: 'bolt', ...common, repeat: { along: repeat, across: 0 } }
      : material.form === 'strip'
        ? { kind: 'strips', ...common, ...(lap > 0 ? { joints: { lap, least: 4 * lap } } : {}) }
        : method === 'outline'
          ? { kind: 'outlines', ...common }
          : { kind: 'rectangles', ...common, method: method === 'saw' ? 'guillotine' : 'free' };
  const first = firstTier(instance);
  return {
    instance,
    question: questionOf(instance, material),
    ...(first === undefined ? {} : { first: { ...questionOf(first, material), soon: true } }),
    owners,
  };
}

function questionOf(instance: CutInstance, { id }: MaterialFacts): HeavyQuestion {
  const key = `layout ${JSON.stringify(instance)}`;
  return { kind: 'layout', key, about: `layout ${id}`, body: instance };
}

function wantedPieces(material: MaterialFacts, rows: readonly Asked[]): readonly Wanted[] {
  if (material.form === 'sheet' || material.form === 'roll') {
    return rows.flatMap((asked) => (asked.blank === undefined ? [] : [{ asked, ...asked.blank }]));
  }
  if (material.form !== 'strip' || material.properties.length === undefined) return [];
  return rows.flatMap((asked) => {
    const piece = pieceOfStrip(asked);
    return piece === undefined ? [] : [{ asked, ...piece }];
  });
}

interface PartsWanted {
  readonly parts: readonly Part[];
  readonly owners: ReadonlyMap<string, readonly Owner[]>;
}

function partsOf(wanted: readonly Wanted[], material: MaterialFacts): PartsWanted {
  const rotations = waysOf(material);
  const parts = new Map<string, Part>();
  const owners = new Map<string, Owner[]>();
  for (const { asked, ...size } of wanted) {
    for (const one of kindsOfPart(asked, size)) {
      const known = parts.get(one.id);
      const count = (known?.count ?? 0) + one.count;
      parts.set(one.id, { ...one, count, ...(rotations === undefined ? {} : { rotations }) });
      const { table, row, occurrence } = asked;
      const owner = { table, row, occurrence, count: one.count };
      owners.set(one.id, [...(owners.get(one.id) ?? []), owner]);
    }
  }
  const sorted = [...parts.values()].sort((a, b) => b.length - a.length || b.width - a.width);
  return { parts: sorted, owners };
}

/** The piece as it is cut: its blank, or its outline and the mirror image of that. */
function kindsOfPart(asked: Asked, size: Omit<Wanted, 'asked'>): readonly Part[] {
  if (size.count <= 0) return [];
  const [length, width] = [rounded(size.length), rounded(size.width)];
  const id = width === 0 ? `${length}` : `${length} × ${width}`;
  const { outline } = asked;
  if (outline === undefined) return [{ id, length, width, count: size.count }];
  const points = outline.points.map(([x, y]): readonly [number, number] => [
    rounded(x),
    rounded(y),
  ]);
  const mirrored = Math.min(outline.mirrored, size.count);
  const as = (count: number, own: typeof points): readonly Part[] =>
    count === 0
      ? []
      : [
          {
            ...boxOf(own),
            id: `${id} ${crc32(JSON.stringify(own)).toString(36)}`,
            count,
            points: own,
          },
        ];
  const mirror = points.map(([x, y]): readonly [number, number] => [-x, y]).reverse();
  return [...as(size.count - mirrored, points), ...as(mirrored, mirror)];
}

function boxOf(points: readonly (readonly [number, number])[]): { length: number; width: number } {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return {
    length: rounded(Math.max(...xs) - Math.min(...xs)),
    width: rounded(Math.max(...ys) - Math.min(...ys)),
  };
}

/** Nap lies one way; grain may be turned end for end. */
function waysOf({ turns, row }: MaterialFacts): readonly Rotation[] | undefined {
  if (turns) return undefined;
  return wordIn(row, 'nap') === 'one_way' ? [0] : [0, 180];
}

function stocksOf(material: MaterialFacts): readonly Stock[] {
  if (material.form === 'roll') {
    const { width } = material.properties;
    const step = material.packs.find((pack) => pack.step !== undefined);
    const price = step === undefined ? 1 : step.price;
    return width === undefined ? [] : [{ id: material.id, length: step?.holds ?? 1, width, price }];
  }
  return material.packs.flatMap((pack) => stockOf(pack) ?? []);
}

function stockOf(pack: PackFacts): Stock | undefined {
  const { id, stock, step, have } = pack;
  if (stock === undefined || step !== undefined) return undefined;
  const { length, width, number } = stock;
  const limit = have === undefined ? {} : { limit: have * number };
  return { id, length, width, price: weighedPrice(pack) / number, ...limit };
}
