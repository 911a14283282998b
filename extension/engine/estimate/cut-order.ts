import type { CutInstance, Fixed, Part, Rotation, Stock } from '../cutting/instance.ts';
import { fittingFixed } from '../cutting/locked/fitting.ts';
import type { TaperedPair } from '../cutting/strips/tapered-pair.ts';
import type { HeavyQuestion } from '../formula/catalogue.ts';
import { crc32 } from '../job/crc32.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { wordIn } from './cells.ts';
import type { CutOrder, Owner, Unheld } from './cut-layout.ts';
import { readLock } from './locks.ts';
import type { MaterialFacts } from './material.ts';
import type { Asked } from './need.ts';
import { weighedPrice, type PackFacts } from './pack.ts';
import { ringPair } from './ring-pair.ts';
import { pieceOfStrip } from './strip-piece.ts';

interface Wanted {
  readonly asked: Asked;
  readonly length: number;
  readonly width: number;
  readonly count: number;
  /** Each is two strips of the row. */
  readonly pair?: TaperedPair;
}

/** Sizes are told apart to a hundredth of a millimetre: no saw is set finer. */
function rounded(mm: number): number {
  return Math.round(mm * 100) / 100;
}

/** The rows that hold parts, and whether tapered strips are cut two by two. */
export interface CutHow {
  readonly locks?: readonly AnsweredRow[];
  readonly paired?: boolean;
}

/**
 * The layout that a material needs for what its rows ask; undefined where nothing is cut from whole
 * stock. Pieces of one size are one part whoever asks for them, so that a layout depends on sizes
 * alone.
 */
export function cutOrder(
  material: MaterialFacts,
  rows: readonly Asked[],
  { locks = [], paired = false }: CutHow = {},
): CutOrder | undefined {
  const wanted = wantedPieces(material, rows, paired);
  const stocks = stocksOf(material);
  if (wanted.length === 0 || stocks.length === 0) return undefined;
  const cut = partsOf(wanted, material);
  const { owners } = cut;
  const bare = bareInstance(material, stocks, cut.parts);
  const { instance, ...holding } = held(bare, locks, cut);
  return {
    instance,
    question: layoutQuestion(instance, `layout ${material.id}`),
    owners,
    mirrored: new Set(cut.mirrored.values()),
    pairs: cut.pairs,
    ...holding,
  };
}

/** Parts and stocks with how the material is cut; nothing is held yet. */
function bareInstance(
  { form, cutting }: MaterialFacts,
  stocks: readonly Stock[],
  parts: readonly Part[],
): CutInstance {
  const { kerf, trim, method, repeat, lap, search } = cutting;
  const effort = search === 'long' ? { effort: 'long' as const } : {};
  const common = { stocks, parts, kerf, trim, ...effort };
  if (form === 'roll') return { kind: 'bolt', ...common, repeat: { along: repeat, across: 0 } };
  if (form === 'strip') {
    return { kind: 'strips', ...common, ...(lap > 0 ? { joints: { lap, least: 4 * lap } } : {}) };
  }
  return method === 'outline'
    ? { kind: 'outlines', ...common }
    : { kind: 'rectangles', ...common, method: method === 'saw' ? 'guillotine' : 'free' };
}

/** The question that a layout answers; `about` names the material. */
export function layoutQuestion(instance: CutInstance, about: string): HeavyQuestion {
  return { kind: 'layout', key: `layout ${JSON.stringify(instance)}`, about, body: instance };
}

type Holding = Pick<CutOrder, 'instance' | 'held' | 'unheld'>;

/** The instance with the parts that locks hold, as far as they fit. */
function held(
  instance: CutInstance,
  rows: readonly AnsweredRow[],
  parts: Pick<PartsWanted, 'plain' | 'mirrored'>,
): Holding {
  const read = rows.map((row) => ({ row, lock: readLock(row) }));
  const unread = read.flatMap(({ row, lock }): readonly Unheld[] =>
    lock === undefined ? [{ row, why: 'unread' }] : [],
  );
  const locks = new Map(read.flatMap(({ lock }) => (lock ? [[lock.row.id, lock] as const] : [])));
  if (instance.kind !== 'rectangles' && instance.kind !== 'outlines') {
    const none = [...locks.values()].map(({ row }): Unheld => ({ row, why: 'no-sheets' }));
    return { instance, held: new Map(), unheld: [...unread, ...none] };
  }
  const wanted = [...locks].map(([id, lock]): Fixed => {
    const { stock, index, x, y, rotation } = lock;
    const part = (lock.mirrored ? parts.mirrored : parts.plain).get(lock.part) ?? '';
    return { id, part, stock, index, x, y, rotation };
  });
  const { kept, refused } = fittingFixed(instance, wanted);
  const unheld = refused.flatMap(({ fixed, why, other }): readonly Unheld[] => {
    const row = locks.get(fixed.id)?.row;
    const size = instance.parts.find(({ id }) => id === fixed.part);
    const sheet = instance.stocks.find(({ id }) => id === fixed.stock);
    return row === undefined
      ? []
      : [
          {
            row,
            why,
            fixed,
            ...(size && { size }),
            ...(sheet && { sheet }),
            ...(other && { other }),
          },
        ];
  });
  const kinds = kept.flatMap(({ id }) => {
    const lock = locks.get(id);
    return lock === undefined ? [] : [[id, lock] as const];
  });
  return {
    instance: kept.length === 0 ? instance : { ...instance, fixed: kept },
    held: new Map(kinds),
    unheld: [...unread, ...unheld],
  };
}

function wantedPieces(
  material: MaterialFacts,
  rows: readonly Asked[],
  paired: boolean,
): readonly Wanted[] {
  if (material.form === 'sheet' || material.form === 'roll') {
    return rows.flatMap((asked) => {
      if (asked.blank === undefined) return [];
      const { leaning, blank } = asked;
      const pair = paired && leaning !== undefined ? ringPair(leaning) : undefined;
      if (pair === undefined) return [{ asked, ...blank }];
      const pairs = Math.floor(blank.count / 2);
      const { length, width } = pair;
      return [
        { asked, ...blank, count: blank.count - 2 * pairs },
        { asked, length, width, count: pairs, pair },
      ];
    });
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
  /** The part that a row asks for, and its mirror image; by the row's id. */
  readonly plain: ReadonlyMap<string, string>;
  readonly mirrored: ReadonlyMap<string, string>;
  readonly pairs: ReadonlyMap<string, TaperedPair>;
}

function partsOf(wanted: readonly Wanted[], material: MaterialFacts): PartsWanted {
  const rotations = waysOf(material);
  const parts = new Map<string, Part>();
  const owners = new Map<string, Owner[]>();
  const [plain, mirrored] = [new Map<string, string>(), new Map<string, string>()];
  const pairs = new Map<string, TaperedPair>();
  for (const { asked, ...size } of wanted) {
    for (const { mirror, ...one } of kindsOfPart(asked, size)) {
      (mirror ? mirrored : plain).set(asked.row, one.id);
      if (size.pair !== undefined) pairs.set(one.id, size.pair);
      const known = parts.get(one.id);
      const count = (known?.count ?? 0) + one.count;
      parts.set(one.id, { ...one, count, ...(rotations === undefined ? {} : { rotations }) });
      const { table, row, occurrence } = asked;
      const owner = { table, row, occurrence, count: one.count };
      owners.set(one.id, [...(owners.get(one.id) ?? []), owner]);
    }
  }
  const sorted = [...parts.values()].sort((a, b) => b.length - a.length || b.width - a.width);
  return { parts: sorted, owners, plain, mirrored, pairs };
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
function kindsOfPart(asked: Asked, size: Omit<Wanted, 'asked'>): readonly KindOfPart[] {
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
