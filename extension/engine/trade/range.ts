import { plain, type Dimension } from '../units/dimension.ts';
import type { Problem } from '../problems.ts';
import { sameValue } from '../units/same-value.ts';
import { tradeProblem } from './trade-problems.ts';

/** What a number of a call must be. */
export type Range =
  'positive' | 'not-negative' | 'share' | 'tilt' | 'any' | 'unchecked' | 'count' | 'count-or-none';

/** A number of a call as a refusal names it. */
export interface Ranged {
  readonly functionName: string;
  readonly name: string;
  readonly value: number;
  readonly dimension: Dimension;
  readonly show: (base: number, dimension: Dimension, unit?: string) => string;
}

/** A right angle; a lip that leans so far has no plan. */
const rightAngle = Math.PI / 2;

function isCount(value: number, least: number): boolean {
  return value > least - 0.5 && sameValue(value, Math.round(value));
}

/** True where a number lies in a range. */
export function inRange(value: number, range: Range): boolean {
  switch (range) {
    case 'positive':
      return value > 0;
    case 'not-negative':
      return value >= 0;
    case 'share':
      return value > 0 && (value <= 1 || sameValue(value, 1));
    case 'tilt':
      return value >= 0 && value < rightAngle && !sameValue(value, rightAngle);
    case 'unchecked':
      return true;
    case 'count':
      return isCount(value, 1);
    case 'count-or-none':
      return isCount(value, 0);
    default:
      return Number.isFinite(value);
  }
}

/** The refusal of a number outside its range; undefined where it lies inside. */
export function rangeProblem(of: Ranged, range: Range): Problem | undefined {
  if (inRange(of.value, range)) return undefined;
  const shown = of.show(of.value, of.dimension, range === 'share' ? '%' : undefined);
  const details = { function: of.functionName, name: of.name, value: shown };
  switch (range) {
    case 'share':
      return tradeProblem('argument-not-a-share', details);
    case 'tilt':
      return tradeProblem('tilt-out-of-range', details);
    case 'count':
    case 'count-or-none': {
      const least = range === 'count' ? 1 : 0;
      const value = of.show(of.value, plain);
      return tradeProblem('argument-not-a-count', { ...details, value, least });
    }
    case 'positive':
      return tradeProblem('argument-not-positive', details);
    default:
      return tradeProblem('argument-negative', details);
  }
}
