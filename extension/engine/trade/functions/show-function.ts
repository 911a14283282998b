import type { FunctionEntry, Parameter } from '../../formula/catalogue.ts';
import { failed, ok } from '../../result.ts';
import { sameDimension } from '../../units/dimension.ts';
import { dimensionName } from '../../units/dimension-names.ts';
import { showQuantity } from '../../units/show.ts';
import { unitOf } from '../../units/unit-words.ts';
import { missing, quantityIn, wordIn } from '../arguments.ts';
import { tradeProblem } from '../trade-problems.ts';

const valueParameter: Parameter = {
  name: 'x',
  help: 'Value to show.',
  type: { kind: 'any-quantity' },
};

/** SHOW. */
export const showFunction: FunctionEntry = {
  name: 'SHOW',
  group: 'units',
  help: 'A value as text, as the grid shows it or in a unit: the only way into text and &.',
  parameters: [
    valueParameter,
    {
      name: 'unit',
      help: 'Unit to show it in, % too; the job’s own when left out.',
      type: { kind: 'unit' },
      optional: true,
    },
  ],
  result: { kind: 'text' },
  example: { formula: '=SHOW(1 3/8in, mm)', shows: '34.9 mm' },
  source: 'definition',
  run: ([given, unitGiven], { settings }) => {
    const value = quantityIn(given);
    if (value === undefined) return failed(missing('SHOW', valueParameter));
    const word = wordIn(unitGiven);
    if (word === undefined) return ok({ kind: 'text', text: showQuantity(value, settings).text });
    const unit = unitOf(word, settings);
    if (unit === undefined)
      return failed(tradeProblem('unit-not-known', { unit: word, example: 'mm' }));
    if (!sameDimension(unit.dimension, value.dimension)) {
      const shown = showQuantity(value, settings).text;
      const dimension = dimensionName(value.dimension);
      const details = { value: shown, unit: word, dimension };
      return failed(tradeProblem('unit-of-other-dimension', details));
    }
    return ok({ kind: 'text', text: showQuantity(value, settings, unit.word).text });
  },
};
