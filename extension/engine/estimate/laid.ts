import type { CutAnswer } from '../cutting/instance.ts';
import { firstTier, quickLayout } from '../cutting/settled-layout.ts';
import type { HeavyAnswers, HeavyQuestion } from '../formula/catalogue.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import type { CutOrder, Laid, Unheld } from './cut-layout.ts';
import { cutOrder, layoutQuestion } from './cut-order.ts';
import type { MaterialFacts } from './material.ts';
import type { Asked } from './need.ts';

/** Layouts found at once, by what they answer: an edit that moves no cut part finds its own again. */
export type QuickLayouts = Map<string, CutAnswer | undefined>;

/** Quick layouts remembered at most. */
const most = 200;

function quickly(order: CutOrder, known: QuickLayouts): CutAnswer | undefined {
  const { key } = order.question;
  if (!known.has(key)) {
    if (known.size >= most) known.clear();
    known.set(key, quickLayout(order.instance));
  }
  return known.get(key);
}

/** What is known of a line's layout now. */
export interface Laying {
  readonly laid?: Laid;
  /** What must be worked out before it counts. */
  readonly waits?: HeavyQuestion;
  /** Locks that do not hold. */
  readonly unheld?: readonly Unheld[];
}

/**
 * The layout of what is cut of a material: the one worked out; until it is there, one found soon, one
 * found at once, or the last one of this material. Empty where nothing is cut from whole stock.
 */
export function layingOf(
  material: MaterialFacts,
  rows: readonly Asked[],
  from: {
    readonly locks: readonly AnsweredRow[];
    readonly heavy: HeavyAnswers | undefined;
    readonly quick: QuickLayouts;
  },
): Laying {
  const order = orderOf(material, rows, from);
  if (order === undefined) return {};
  const laying = layingOfOrder(order, from);
  return { ...laying, unheld: order.unheld };
}

/**
 * What is cut, with tapered strips two by two where the material says so or, where it says nothing,
 * where that comes cheaper: as the layouts found at once tell, for a pair lies less freely than two.
 */
function orderOf(
  material: MaterialFacts,
  rows: readonly Asked[],
  { locks, quick }: { readonly locks: readonly AnsweredRow[]; readonly quick: QuickLayouts },
): CutOrder | undefined {
  const order = cutOrder(material, rows, { locks });
  if (order === undefined || rows.every(({ leaning }) => leaning === undefined)) return order;
  const always = material.cutting.pairing === 'always';
  const one = quickly(order, quick);
  if (!always && !canGain(one, order)) return order;
  const pairs = cutOrder(material, rows, { locks, paired: true });
  if (pairs === undefined || pairs.pairs.size === 0) return order;
  const two = quickly(pairs, quick);
  const more = left(one, order) - left(two, pairs);
  if (always) return more < 0 ? order : pairs;
  return one && two && isGain([more, one.price - two.price, one.count - two.count]) ? pairs : order;
}

/** Not where everything lies on one sheet and no sheet is cheaper, or where nothing is known. */
function canGain(one: CutAnswer | undefined, { instance }: CutOrder): boolean {
  if (one === undefined) return false;
  if (one.count !== 1 || one.unplaced.length > 0 || instance.kind === 'packs') return true;
  return instance.stocks.some(({ price }) => price < one.price);
}

/** What counts first decides; where nothing is gained nothing is changed. */
function isGain(gains: readonly number[]): boolean {
  return (gains.find((gain) => Math.abs(gain) > 1e-9) ?? 0) > 0;
}

/** Blanks that found no place. */
function left(answer: CutAnswer | undefined, { pairs }: CutOrder): number {
  const unplaced = answer?.unplaced ?? [];
  return unplaced.reduce((sum, { part, count }) => sum + count * (pairs.has(part) ? 2 : 1), 0);
}

function layingOfOrder(
  order: CutOrder,
  from: {
    readonly heavy: HeavyAnswers | undefined;
    readonly quick: QuickLayouts;
  },
): Laying {
  const quick = quickly(order, from.quick);
  if (quick?.proven === true) return { laid: { order, answer: quick, settled: true } };
  const answer = from.heavy?.answer(order.question);
  if (isLayout(answer)) return { laid: { order, answer, settled: true } };
  // What could not be worked out is not asked again.
  return answer === undefined ? untilSettled(order, quick, from.heavy) : {};
}

/** What is shown until the layout that counts is there, and what is to be worked out next. */
function untilSettled(
  order: CutOrder,
  quick: CutAnswer | undefined,
  heavy: HeavyAnswers | undefined,
): Laying {
  const { question } = order;
  const first = soonQuestion(order);
  const soon = first && heavy?.answer(first);
  if (isLayout(soon) && soon.proven) return { laid: { order, answer: soon, settled: true } };
  const waits = first !== undefined && soon === undefined ? first : question;
  const last = isLayout(soon) ? soon : (quick ?? heavy?.before(question)?.answer);
  return isLayout(last) ? { laid: { order, answer: last, settled: false }, waits } : { waits };
}

/** The same, to be answered soon with a layout that may be bettered. */
function soonQuestion({ instance, question }: CutOrder): HeavyQuestion | undefined {
  const first = firstTier(instance);
  return first && { ...layoutQuestion(first, question.about), soon: true };
}

function isLayout(answer: unknown): answer is CutAnswer {
  return typeof answer === 'object' && answer !== null && 'placements' in answer;
}
