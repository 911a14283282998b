import type { FunctionEntry } from '../formula/catalogue.ts';
import { aimFunctions } from './functions/aim-functions.ts';
import { boxFunctions } from './functions/box-functions.ts';
import { driverFunctions } from './functions/driver-functions.ts';
import { packFunction } from './functions/pack-function.ts';
import { resinFunctions } from './functions/resin-functions.ts';
import { ringFunctions } from './functions/ring-functions.ts';
import { roundingFunctions } from './functions/rounding-functions.ts';
import { routerFunctions } from './functions/router-functions.ts';
import { priceFunctions } from './functions/price-functions.ts';
import { shapeFunctions } from './functions/shape-functions.ts';
import { showFunction } from './functions/show-function.ts';
import { withFiniteAnswer } from './finite-answer.ts';
import { upholsteryFunctions } from './functions/upholstery-functions.ts';

const listed: readonly FunctionEntry[] = [
  ...ringFunctions,
  ...driverFunctions,
  ...aimFunctions,
  ...boxFunctions,
  ...routerFunctions,
  ...shapeFunctions,
  ...resinFunctions,
  ...upholsteryFunctions,
  packFunction,
  ...priceFunctions,
  ...roundingFunctions,
  showFunction,
];

/** Every function of the trade, in the order in which they are listed. */
export const tradeFunctions: readonly FunctionEntry[] = listed.map(withFiniteAnswer);
