import type { FunctionEntry } from '../catalogue.ts';
import { arithmeticFunctions } from './arithmetic.ts';
import { criteriaFunctions } from './criteria.ts';
import { logicFunctions } from './logic.ts';
import { roundingFunctions } from './rounding.ts';
import { totalFunctions } from './totals.ts';
import { trigonometryFunctions } from './trigonometry.ts';
import { wholeNumberFunctions } from './whole-numbers.ts';
import { textFunctions } from './words.ts';

/**
 * The functions that follow OpenFormula. There is no clock and no chance among them: the same job gives
 * the same answer everywhere.
 */
export const standardFunctions: readonly FunctionEntry[] = [
  ...totalFunctions,
  ...criteriaFunctions,
  ...arithmeticFunctions,
  ...roundingFunctions,
  ...trigonometryFunctions,
  ...wholeNumberFunctions,
  ...logicFunctions,
  ...textFunctions,
];
