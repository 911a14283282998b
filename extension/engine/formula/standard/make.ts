import { problemMaker } from '../../problems.ts';
import { failed, ok, type Result } from '../../result.ts';
import { angle, plain, type Dimension } from '../../units/dimension.ts';
import type { Argument, FunctionEntry, Parameter } from '../catalogue.ts';
import type { CellValue } from '../value.ts';
import { numberOf } from './values.ts';

const standardProblem = problemMaker({
  'standard-no-answer': '{name} has no answer: {reason}.',
});

/** Where the rules of the standard functions are from. */
const source = 'OpenFormula (OASIS OpenDocument 1.3 part 4)';

type Standard = Omit<FunctionEntry, 'group' | 'source'>;

/** A standard function of the catalogue. */
export function standard(entry: Standard): FunctionEntry {
  return { ...entry, group: 'standard', source };
}

/** The refusal of a function for these arguments. */
export function noAnswer(name: string, reason: string): Result<never> {
  return failed(standardProblem('standard-no-answer', { name, reason }));
}

/** A quantity as a function's answer, or a refusal where the number is beyond all bounds. */
export function answer(name: string, base: number, dimension: Dimension): Result<CellValue> {
  if (!Number.isFinite(base)) return noAnswer(name, 'the number is too large');
  return ok({ kind: 'quantity', base: base + 0, dimension });
}

export function textAnswer(text: string): Result<CellValue> {
  return ok({ kind: 'text', text });
}

export function yesNoAnswer(yes: boolean): Result<CellValue> {
  return ok({ kind: 'yes-no', yes });
}

type Named = readonly [name: string, help: string];

/** A plain number. */
export function number(...[name, help]: Named): Parameter {
  return { name, help, type: { kind: 'quantity', dimensions: [plain] } };
}

/** An angle, or a plain number in radians. */
export function radians(...[name, help]: Named): Parameter {
  return { name, help, type: { kind: 'quantity', dimensions: [angle, plain] } };
}

/** A quantity that shares its dimension with the others of this letter. */
export function alike(...[name, help]: Named): Parameter {
  return { name, help, type: { kind: 'same', letter: 'a' } };
}

/** A quantity of any dimension, on its own. */
export function anyNumber(...[name, help]: Named): Parameter {
  return { name, help, type: { kind: 'any-quantity' } };
}

export function words(...[name, help]: Named): Parameter {
  return { name, help, type: { kind: 'text' } };
}

export function yesNo(...[name, help]: Named): Parameter {
  return { name, help, type: { kind: 'yes-no' } };
}

export function anything(...[name, help]: Named): Parameter {
  return { name, help, type: { kind: 'value' } };
}

/** The same parameter, which may be left out. */
export function optional(parameter: Parameter): Parameter {
  return { ...parameter, optional: true };
}

/** The same parameter, once or more often, lists allowed. */
export function many(parameter: Parameter): Parameter {
  return { ...parameter, list: true, repeats: true };
}

interface PlainFunction {
  readonly name: string;
  readonly help: string;
  readonly parameters: readonly Parameter[];
  readonly example: FunctionEntry['example'];
  /** Of the answer; a plain number unless told. */
  readonly dimension?: Dimension;
  /** The answer for the numbers given (NaN where one was left out), or why there is none. */
  readonly answer: (numbers: PlainNumbers) => number | string;
}

type PlainNumbers = readonly [x: number, y: number, z: number];

/** A function from up to three plain numbers to a number. */
export function plainFunction(form: PlainFunction): FunctionEntry {
  const { name, help, parameters, example, dimension = plain } = form;
  const at = (args: readonly Argument[], index: number): number =>
    numberOf(args[index]) ?? (parameters[index]?.optional === true ? Number.NaN : 0);
  return standard({
    name,
    help,
    parameters,
    example,
    result: { kind: 'quantity', dimension },
    run: (args) => {
      const found = form.answer([at(args, 0), at(args, 1), at(args, 2)]);
      return typeof found === 'string' ? noAnswer(name, found) : answer(name, found, dimension);
    },
  });
}
