import type { FunctionEntry, Parameter } from '../../formula/catalogue.ts';
import { failed, ok } from '../../result.ts';
import { roundedTo } from '../../units/same-value.ts';
import { missing, quantityIn, shownWith } from '../arguments.ts';
import { ranged, rangeProblem } from '../range.ts';
import { tradeProblem } from '../trade-problems.ts';

const valueParameter: Parameter = {
  name: 'x',
  help: 'Value to round.',
  type: { kind: 'same', letter: 'a' },
};

const stepParameter: Parameter = {
  name: 'step',
  help: 'Step to round to, such as 1/16in.',
  type: { kind: 'same', letter: 'a' },
  ...ranged('positive'),
};

function rounding(
  name: string,
  direction: 'nearest' | 'up' | 'down',
  form: { readonly help: string; readonly formula: string; readonly shows: string },
): FunctionEntry {
  return {
    name,
    group: 'units',
    help: form.help,
    parameters: [valueParameter, stepParameter],
    result: { kind: 'same', letter: 'a' },
    example: { formula: form.formula, shows: form.shows },
    source: 'definition; a whole number of steps is kept within one part in a billion',
    run: ([given, stepGiven], context) => {
      const value = quantityIn(given);
      if (value === undefined) return failed(missing(name, valueParameter));
      const step = quantityIn(stepGiven);
      if (step === undefined) return failed(missing(name, stepParameter));
      if (value.dimension.tag === 'point') {
        return failed(tradeProblem('step-of-temperature', { function: name }));
      }
      const { base, dimension } = step;
      const problem = rangeProblem(
        { functionName: name, name: 'step', value: base, dimension, show: shownWith(context) },
        'positive',
      );
      if (problem !== undefined) return failed(problem);
      const rounded = roundedTo(value.base, base, direction);
      return ok({ kind: 'quantity', base: rounded, dimension: value.dimension });
    },
  };
}

/** Rounding to a step that has a unit. */
export const roundingFunctions: readonly FunctionEntry[] = [
  rounding('ROUNDTO', 'nearest', {
    help: 'A value to the nearest step; half a step goes away from nothing.',
    formula: '=ROUNDTO(5 3/32in, 1/16in)',
    shows: '5 1/8 in',
  }),
  rounding('ROUNDUPTO', 'up', {
    help: 'A value up to the next step.',
    formula: '=ROUNDUPTO(5.01in, 1/8in)',
    shows: '5 1/8 in',
  }),
  rounding('ROUNDDOWNTO', 'down', {
    help: 'A value down to the step below.',
    formula: '=ROUNDDOWNTO(5.24in, 1/8in)',
    shows: '5 1/8 in',
  }),
];
