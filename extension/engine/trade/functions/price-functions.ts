import type { FunctionEntry } from '../../formula/catalogue.ts';
import type { Problem } from '../../problems.ts';
import { money, plain, time, type Dimension } from '../../units/dimension.ts';
import { comparedValues } from '../../units/same-value.ts';
import { needed } from '../arguments.ts';
import { quantityFunction } from '../quantity-function.ts';
import { tradeProblem } from '../trade-problems.ts';
import {
  learnedTime,
  learnedTotal,
  learningModels,
  markupFromMargin,
  priceFromMargin,
  threePointTime,
  type LearningModel,
} from '../work-time.ts';

type Show = (base: number, dimension: Dimension, unit?: string) => string;

const margin = needed('margin', plain, 'Margin, a share of the price.');
const first = needed('first', time, 'Time of the first unit.');
const rate = needed(
  'rate',
  plain,
  'Share of the time that is left when the count doubles, such as 85 %.',
);
const unit = needed('unit', plain, 'Number of the unit.');
const model = {
  name: 'model',
  help: 'unit (Crawford: the rate is of the unit’s own time) or average (Wright: of the average so far).',
  choices: learningModels,
};

/** Below this rate a falling average would leave less than nothing for the next unit. */
const leastAverageRate = 0.5;

function tooSteep(
  name: string,
  of: { readonly rate: number; readonly model: LearningModel },
  show: Show,
): Problem | undefined {
  if (of.model === 'unit' || comparedValues(of.rate, leastAverageRate) >= 0) return undefined;
  return tradeProblem('learning-too-steep', { function: name, value: show(of.rate, plain, '%') });
}

const learning = '“learningCurve”, Air Force Institute of Technology (Crawford and Wright models)';
const margins = 'Fabric Architecture, February 2018: cost 100 at 20 % margin is 125';

/** Time and price. */
export const priceFunctions: readonly FunctionEntry[] = [
  quantityFunction({
    name: 'TIME.THREEPOINT',
    group: 'price',
    help: 'Expected time from a low, a likely and a high estimate.',
    parameters: [
      needed('low', time, 'If all goes well.'),
      needed('likely', time, 'Most often.'),
      needed('high', time, 'If much goes wrong.'),
    ],
    dimension: time,
    example: { formula: '=TIME.THREEPOINT(10min, 15min, 30min)', shows: '16.67 min' },
    source: 'PERT: (low + 4 × likely + high) / 6',
    answer: ({ low, likely, high }, _, show) =>
      comparedValues(low, likely) > 0 || comparedValues(likely, high) > 0
        ? tradeProblem('estimates-out-of-order', {
            function: 'TIME.THREEPOINT',
            low: show(low, time),
            likely: show(likely, time),
            high: show(high, time),
          })
        : threePointTime(low, likely, high),
  }),
  quantityFunction({
    name: 'TIME.LEARN',
    group: 'price',
    help: 'Time of the n-th unit, when each doubling of the count takes a share of the time.',
    parameters: [first, rate, unit],
    choice: model,
    dimension: time,
    example: { formula: '=TIME.LEARN(4h, 85%, 2, unit)', shows: '3 h 24 min' },
    source: learning,
    ranges: { rate: 'share', unit: 'units' },
    answer: ({ first: one, rate: share, unit: count }, by, show) =>
      tooSteep('TIME.LEARN', { rate: share, model: by }, show) ??
      learnedTime(one, share, { unit: count, model: by }),
  }),
  quantityFunction({
    name: 'TIME.LEARNTOTAL',
    group: 'price',
    help: 'Time of the first n units together.',
    parameters: [first, rate, unit],
    choice: model,
    dimension: time,
    example: { formula: '=TIME.LEARNTOTAL(4h, 85%, 2, unit)', shows: '7 h 24 min' },
    source: learning,
    ranges: { rate: 'share', unit: 'units' },
    answer: ({ first: one, rate: share, unit: count }, by, show) =>
      tooSteep('TIME.LEARNTOTAL', { rate: share, model: by }, show) ??
      learnedTotal(one, share, { unit: count, model: by }),
  }),
  quantityFunction({
    name: 'PRICE.FROMMARGIN',
    group: 'price',
    help: 'Price that leaves a share of itself as margin over a cost.',
    parameters: [needed('cost', money, 'Cost.'), margin],
    dimension: money,
    example: { formula: '=PRICE.FROMMARGIN(100USD, 20%)', shows: '125.00 USD' },
    source: margins,
    ranges: { margin: 'margin' },
    answer: ({ cost, margin: share }) => priceFromMargin(cost, share),
  }),
  quantityFunction({
    name: 'MARKUP.FROMMARGIN',
    group: 'price',
    help: 'Markup on the cost that leaves a margin on the price.',
    parameters: [margin],
    dimension: plain,
    example: { formula: '=MARKUP.FROMMARGIN(20%)', shows: '0.25' },
    source: margins,
    ranges: { margin: 'margin' },
    answer: ({ margin: share }) => markupFromMargin(share),
  }),
];
