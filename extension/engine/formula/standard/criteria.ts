import { ok, type Result } from '../../result.ts';
import { plain } from '../../units/dimension.ts';
import type { Argument, FunctionContext, FunctionEntry, Parameter } from '../catalogue.ts';
import { meets, readCriterion, type Criterion } from '../criterion.ts';
import type { CellValue } from '../value.ts';
import { answer, anything, noAnswer, optional, standard } from './make.ts';
import { dimensionOf, numberIn, placesOf, valuesOf } from './values.ts';

const tested: Parameter = { ...anything('values', 'The list that is looked through'), list: true };

const criterion: Parameter = {
  name: 'criterion',
  help: 'A value to be equal to, or a text such as ">2in"',
  type: { kind: 'criterion', of: 'values' },
};

function summed(weighted: boolean): Parameter {
  return optional({
    name: 'summed',
    help: 'The list whose values are taken; the first one unless told',
    type: { kind: 'same', letter: 'a' },
    list: true,
    weighted,
  });
}

function criterionOf(args: readonly Argument[], context: FunctionContext): Result<Criterion> {
  const given = valuesOf(args[1])[0];
  const values = valuesOf(args[0]);
  if (given === undefined) return ok({ comparison: '=', than: { kind: 'text', text: '' } });
  if (given.kind !== 'text') return ok({ comparison: '=', than: given });
  const quantity = values.find(({ kind }) => kind === 'quantity');
  const of = quantity === undefined ? undefined : dimensionOf([quantity]);
  return readCriterion(given.text, of, context.settings);
}

/** Places of the list whose values meet the criterion; blanks never do. */
function meeting(args: readonly Argument[], context: FunctionContext): Result<readonly number[]> {
  const read = criterionOf(args, context);
  if (!read.ok) return read;
  const found = placesOf(args[0]).flatMap((value, index) =>
    value !== undefined && meets(value, read.value) ? [index] : [],
  );
  return ok(found);
}

function taken(
  args: readonly Argument[],
  context: FunctionContext,
  name: string,
): Result<readonly number[]> {
  const found = meeting(args, context);
  if (!found.ok) return found;
  const places: readonly (CellValue | undefined)[] = placesOf(args[2] ?? args[0]);
  if (places.length !== placesOf(args[0]).length) {
    return noAnswer(name, 'the two lists are not of the same rows');
  }
  const numbers = found.value.flatMap((index) => {
    const value = places[index];
    return value === undefined ? [] : (numberIn(value) ?? []);
  });
  return ok(numbers);
}

function sum(numbers: readonly number[]): number {
  return numbers.reduce((total, one) => total + one, 0);
}

/** Counting and adding up only what meets a criterion. */
export const criteriaFunctions: readonly FunctionEntry[] = [
  standard({
    name: 'COUNTIF',
    help: 'How many values of a list meet a criterion.',
    parameters: [tested, criterion],
    result: { kind: 'quantity', dimension: plain },
    example: { formula: '=COUNTIF(3in, ">2in")', shows: '1' },
    run: (args, context) => {
      const found = meeting(args, context);
      return found.ok ? answer('COUNTIF', found.value.length, plain) : found;
    },
  }),
  standard({
    name: 'SUMIF',
    help: 'Adds up the values whose row meets a criterion; each counts once for each piece.',
    parameters: [tested, criterion, summed(true)],
    result: { kind: 'same', letter: 'a' },
    example: { formula: '=SUMIF(3in, ">2in")', shows: '3 in' },
    run: (args, context) => {
      const numbers = taken(args, context, 'SUMIF');
      if (!numbers.ok) return numbers;
      return answer('SUMIF', sum(numbers.value), dimensionOf([args[2] ?? args[0]]));
    },
  }),
  standard({
    name: 'AVERAGEIF',
    help: 'The mean of the values whose row meets a criterion.',
    parameters: [tested, criterion, summed(false)],
    result: { kind: 'same', letter: 'a' },
    example: { formula: '=AVERAGEIF(3in, ">2in")', shows: '3 in' },
    run: (args, context) => {
      const numbers = taken(args, context, 'AVERAGEIF');
      if (!numbers.ok) return numbers;
      const { value } = numbers;
      if (value.length === 0) return noAnswer('AVERAGEIF', 'no value meets the criterion');
      return answer('AVERAGEIF', sum(value) / value.length, dimensionOf([args[2] ?? args[0]]));
    },
  }),
];
