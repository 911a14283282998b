import type { Place } from '../../problems.ts';
import type { Quantity } from '../../units/quantity.ts';

/**
 * How a check came out: it holds; it holds, but by less than the margin it wants; it does not hold;
 * a person has to decide; or there is nothing to compare yet.
 */
export type CheckOutcome = 'pass' | 'near' | 'fail' | 'decide' | 'no-answer';

/** One row of the checks sheet with its outcome. */
export interface Check {
  readonly id: string;
  readonly occurrence: number;
  readonly name: string;
  /** Kind of check; empty where the row names none. */
  readonly kind: string;
  /** Id of the row that is looked at; empty where the check stands alone. */
  readonly on: string;
  readonly level: 'must' | 'should';
  readonly outcome: CheckOutcome;
  readonly value?: Quantity;
  readonly least?: Quantity;
  readonly most?: Quantity;
  /** What is left to the limit that is closer; negative where the check fails. */
  readonly margin?: Quantity;
  /** The outcome as a sentence, with the figures and their units. */
  readonly message: string;
  /** The cell of its value. */
  readonly place: Place;
}
