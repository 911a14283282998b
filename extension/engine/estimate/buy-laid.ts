import type { UnitSettings } from '../units/quantity.ts';
import { lengthText, sizeText } from './amount.ts';
import type { Step } from './bill.ts';
import type { Laid } from './cut-layout.ts';
import type { MaterialFacts } from './material.ts';
import { offerOf } from './pack.ts';
import { cheapestCount, priceOf, type PackChoice } from './packs.ts';

/**
 * The packs that a layout opens: sheets and lengths as they were laid, whole packs of them, and no
 * fewer than are sold at a time.
 */
export function packsOfLayout(material: MaterialFacts, { answer }: Laid): PackChoice {
  const opened = new Map<string, number>();
  for (const { stock } of answer.sheets) opened.set(stock, (opened.get(stock) ?? 0) + 1);
  for (const { stock, times } of answer.patterns)
    opened.set(stock, (opened.get(stock) ?? 0) + times);
  const packs = material.packs.flatMap((pack) => {
    const sheets = opened.get(pack.id) ?? 0;
    const opens = Math.ceil(sheets / (pack.stock?.number ?? 1) - 1e-9);
    const count = cheapestCount(offerOf(pack, pack.holds), opens);
    return count > 0 ? [{ pack, count }] : [];
  });
  return {
    packs: packs.map(({ pack, count }) => ({ id: pack.id, count })),
    cost: packs.reduce(
      (sum, { pack, count }) => sum + priceOf(offerOf(pack, pack.holds), count),
      0,
    ),
    amount: packs.reduce((sum, { pack, count }) => sum + pack.holds * count, 0),
  };
}

/** What a layout says, in words: how many, how well used, and how few there could be. */
export function laidSteps(
  material: MaterialFacts,
  laid: Laid,
  settings: UnitSettings,
): readonly Step[] {
  const { answer, settled } = laid;
  const used = `${String(Math.round(answer.utilisation * 1000) / 10)} % of it becomes parts`;
  const looking = settled ? [] : [{ text: 'settling: a better layout is being looked for' }];
  if (material.form === 'roll') {
    const bolt = lengthText(material.properties.width ?? 0, settings);
    const length = lengthText(answer.length ?? 0, settings);
    const across = { text: `laid across ${bolt}: ${length}, ${used}` };
    const shortest = answer.proven ? [{ text: 'less than that is impossible' }] : [];
    return [...sizeSteps(laid, settings), across, ...shortest, ...looking];
  }
  const noun = material.form === 'strip' ? 'length' : 'sheet';
  const number = `${String(answer.count)} ${noun}${answer.count === 1 ? '' : 's'}`;
  const out = { text: `laid out: ${number}, ${used}` };
  return [...sizeSteps(laid, settings), out, ...fewestSteps(laid), ...looking];
}

// The working is for a person to follow; the largest parts settle the layout.
const shownSizes = 12;

function sizeSteps({ order }: Laid, settings: UnitSettings): readonly Step[] {
  if (order.instance.kind === 'packs') return [];
  const { parts } = order.instance;
  const steps: Step[] = parts.slice(0, shownSizes).map(({ id, count, length, width }) => {
    const size = width === 0 ? lengthText(length, settings) : sizeText({ length, width }, settings);
    const two = order.pairs.has(id) ? ', each two strips head to tail' : '';
    return { text: `${String(count)} of ${size}${two}` };
  });
  const more = parts.length - steps.length;
  return more > 0 ? [...steps, { text: `and ${String(more)} smaller sizes` }] : steps;
}

function fewestSteps({ answer, order }: Laid): readonly Step[] {
  const only = order.instance.kind !== 'packs' && order.instance.stocks.length === 1;
  if (answer.proven) {
    const least = only
      ? `fewer than ${String(answer.count)} is impossible`
      : 'nothing can cost less';
    return [{ text: least }];
  }
  return answer.bound > 0 ? [{ text: `at least ${String(answer.bound)} in any layout` }] : [];
}
