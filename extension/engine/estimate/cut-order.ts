import type { CutInstance, Fixed, Part, Rotation, Stock } from '../cutting/instance.ts';
import { canHold } from '../cutting/locked/fixed-box.ts';
import { fittingFixed } from '../cutting/locked/fitting.ts';
import type { HeavyQuestion } from '../formula/catalogue.ts';
import { whenAsked } from '../steps.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { wordIn } from './cells.ts';
import type { CutOrder, Unheld } from './cut-layout.ts';
import { ownersOf, partNames, partsOf, wantedPieces } from './cut-parts.ts';
import { readLock } from './locks.ts';
import type { MaterialFacts } from './material.ts';
import type { Asked } from './need.ts';
import { weighedPrice, type PackFacts } from './pack.ts';
import { onDemand } from '../units/on-demand.ts';

/** The rows that hold parts, and whether tapered strips are cut two by two. */
export interface CutHow {
  readonly locks?: readonly AnsweredRow[];
  readonly paired?: boolean;
}

const ownersOnDemand = onDemand('owners');

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
  const stocks = stocksOf(material);
  if (stocks.length === 0) return undefined;
  const wanted = wantedPieces(material, rows, paired);
  if (wanted.every(({ length }) => length === 0)) return undefined;
  const cut = partsOf(wanted, waysOf(material));
  const bare = bareInstance(material, stocks, cut.parts);
  const { instance, ...holding } = held(bare, locks, () => partNames(rows, wanted));
  const order = {
    instance,
    question: layoutQuestion(instance, `layout ${material.id}`),
    mirrored: cut.mirrored,
    pairs: cut.pairs,
    ...holding,
  };
  return ownersOnDemand(
    order,
    whenAsked(() => ownersOf(rows, wanted)),
  );
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
  names: () => ReturnType<typeof partNames>,
): Holding {
  if (rows.length === 0) return { instance, held: new Map(), unheld: [] };
  const read = rows.map((row) => ({ row, lock: readLock(row) }));
  const unread = read.flatMap(({ row, lock }): readonly Unheld[] =>
    lock === undefined ? [{ row, why: 'unread' }] : [],
  );
  const locks = new Map(read.flatMap(({ lock }) => (lock ? [[lock.row.id, lock] as const] : [])));
  if (!canHold(instance)) {
    const none = [...locks.values()].map(({ row }): Unheld => ({ row, why: 'no-sheets' }));
    return { instance, held: new Map(), unheld: [...unread, ...none] };
  }
  const parts = names();
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
            ...(sheet && instance.kind !== 'bolt' && { sheet }),
            ...(instance.kind === 'bolt' && { roll: true }),
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
