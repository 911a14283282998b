import type { CutInstance, Part, Rotation, Stock } from '../cutting/instance.ts';
import { wordIn } from './cells.ts';
import type { CutOrder, Owner } from './cut-layout.ts';
import type { MaterialFacts } from './material.ts';
import type { Asked } from './need.ts';
import type { PackFacts } from './pack.ts';
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
        : { kind: 'rectangles', ...common, method: method === 'saw' ? 'guillotine' : 'free' };
  const key = `layout ${JSON.stringify(instance)}`;
  return {
    instance,
    question: { kind: 'layout', key, about: `layout ${material.id}`, body: instance },
    owners,
  };
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

function partsOf(
  wanted: readonly Wanted[],
  material: MaterialFacts,
): { readonly parts: readonly Part[]; readonly owners: ReadonlyMap<string, readonly Owner[]> } {
  const rotations = waysOf(material);
  const parts = new Map<string, Part>();
  const owners = new Map<string, Owner[]>();
  for (const one of wanted) {
    if (one.count <= 0) continue;
    const [length, width] = [rounded(one.length), rounded(one.width)];
    const id = width === 0 ? `${length}` : `${length} × ${width}`;
    const count = (parts.get(id)?.count ?? 0) + one.count;
    parts.set(id, { id, length, width, count, ...(rotations === undefined ? {} : { rotations }) });
    const { table, row, occurrence } = one.asked;
    const owner = { table, row, occurrence, count: one.count };
    owners.set(id, [...(owners.get(id) ?? []), owner]);
  }
  const sorted = [...parts.values()].sort((a, b) => b.length - a.length || b.width - a.width);
  return { parts: sorted, owners };
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

function stockOf({ id, stock, price, step, have }: PackFacts): Stock | undefined {
  if (stock === undefined || step !== undefined) return undefined;
  const { length, width, number } = stock;
  const limit = have === undefined ? {} : { limit: have * number };
  return { id, length, width, price: price / number, ...limit };
}
