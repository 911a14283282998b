/** Learning by the time of the n-th unit (Crawford) or by the average of the first n (Wright). */
export type LearningModel = 'unit' | 'average';

/** The models, as written in formulas. */
export const learningModels: readonly LearningModel[] = ['unit', 'average'];

/**
 * Expected time from a low, a likely and a high estimate.
 *
 * @source PERT: (low + 4 × likely + high) / 6
 * @example 10, 15 and 30 min: 16.667 min
 */
export function threePointTime(low: number, likely: number, high: number): number {
  return (low + 4 * likely + high) / 6;
}

function slope(rate: number): number {
  return Math.log2(rate);
}

/**
 * Time of the n-th unit where each doubling takes `rate` of the time.
 *
 * @source AFIT-R learningCurve, vignette
 * @example first 100, rate 85 %, unit 125: 32.236 by unit, 24.701 by average
 */
export function learnedTime(
  first: number,
  rate: number,
  of: { readonly unit: number; readonly model: LearningModel },
): number {
  const { unit, model } = of;
  if (model === 'unit') return first * unit ** slope(rate);
  return learnedTotal(first, rate, of) - learnedTotal(first, rate, { model, unit: unit - 1 });
}

/**
 * Time of the first n units together.
 *
 * @source AFIT-R learningCurve, vignette
 * @example first 100, rate 85 %, 125 units: 5201.085 by unit, 4029.559 by average
 */
export function learnedTotal(
  first: number,
  rate: number,
  of: { readonly unit: number; readonly model: LearningModel },
): number {
  const { unit, model } = of;
  if (unit <= 0) return 0;
  if (model === 'average') return first * unit ** (slope(rate) + 1);
  let sum = 0;
  for (let one = 1; one <= unit; one++) sum += first * one ** slope(rate);
  return sum;
}

/** Price that leaves a share of itself as margin. @source Fabric Architecture, 2018: cost / (1 − margin) */
export function priceFromMargin(cost: number, margin: number): number {
  return cost / (1 - margin);
}

/** Markup on cost that leaves this margin on the price. @source Fabric Architecture, 2018 */
export function markupFromMargin(margin: number): number {
  return margin / (1 - margin);
}
