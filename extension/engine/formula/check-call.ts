import type { Dimension } from '../units/dimension.ts';
import { unitOf } from '../units/unit-words.ts';
import { sameDimension } from '../units/dimension.ts';
import type { FunctionEntry } from './catalogue.ts';
import { checkArgument } from './check-argument.ts';
import { checkCriterion } from './check-criterion.ts';
import { letterDimensions, type CallExpression, type CheckedArguments } from './check-letters.ts';
import { resultType } from './check-result.ts';
import { noteProblem, type Checking, type Want } from './checking.ts';
import type { Checked } from './checked.ts';
import type { Expression } from './expression.ts';
import { expressionText } from './expression-text.ts';
import { formulaProblem } from './formula-problems.ts';
import { suggestion } from './near-name.ts';
import { argumentCount, parameterIndex, parameterOf, signatureText } from './parameters.ts';
import { arithmeticDimension, isWords, quantityType, typeName } from './value-type.ts';
import { standardUnit } from '../units/standard-units.ts';

const noClock = 'a job gives the same answer every day';
const byName = 'a row is reached by its name, such as base.length or on.material.thickness';
const byKind = 'a list such as all(ring).wall already takes the rows of one kind';

/** Functions known elsewhere, with why they are not here. */
const absent: ReadonlyMap<string, string> = new Map([
  ...['TODAY', 'NOW', 'RAND', 'RANDBETWEEN'].map((name) => [name, noClock] as const),
  ...['VLOOKUP', 'HLOOKUP', 'LOOKUP', 'XLOOKUP', 'INDEX', 'MATCH', 'OFFSET', 'INDIRECT'].map(
    (name) => [name, byName] as const,
  ),
  ...['SUMIFS', 'COUNTIFS', 'AVERAGEIFS', 'FILTER'].map((name) => [name, byKind] as const),
]);

function entryOf(checking: Checking, call: CallExpression): FunctionEntry | undefined {
  const { catalogue } = checking.scope;
  const { name, nameSpan } = call;
  const entry = catalogue.get(name);
  if (entry !== undefined) return entry;
  const reason = absent.get(name);
  const problem =
    reason === undefined
      ? formulaProblem('function-unknown', {
          name,
          suggestion: suggestion(
            name,
            [...catalogue.values()].map((one) => one.name),
          ),
        })
      : formulaProblem('function-absent', { name, reason });
  noteProblem(checking, problem, nameSpan);
  return undefined;
}

function countWords(least: number, most: number): string {
  const plural = (count: number): string =>
    count === 0 ? 'no arguments' : `${String(count)} argument${count === 1 ? '' : 's'}`;
  if (most === Infinity) return `${plural(least)} or more`;
  return least === most ? plural(least) : `${String(least)} to ${plural(most)}`;
}

function countFits(checking: Checking, call: CallExpression, entry: FunctionEntry): boolean {
  const { least, most } = argumentCount(entry);
  const { name } = entry;
  const given = call.args.length;
  const signature = signatureText(entry);
  if (given < least || given > most) {
    const wanted = countWords(least, most);
    const problem = formulaProblem('argument-count', { name, wanted, given, signature });
    noteProblem(checking, problem, call.span);
    return false;
  }
  const empty = call.args.findIndex((argument, index) => {
    const parameter = parameterOf(entry, index);
    return (
      argument === undefined && parameter?.optional !== true && parameter?.type.kind !== 'value'
    );
  });
  if (empty === -1) return true;
  const parameter = parameterOf(entry, empty)?.name ?? '';
  noteProblem(
    checking,
    formulaProblem('argument-empty', { name, parameter, signature }),
    call.span,
  );
  return false;
}

function branchWant(entry: FunctionEntry, argument: number, want: Want): Want {
  const index = parameterIndex(entry, argument);
  const branch = entry.result.kind === 'branches' && index !== undefined;
  return branch && entry.result.arguments.includes(index) ? want : 'any';
}

function listAllowed(checking: Checking, call: CallExpression, entry: FunctionEntry): boolean {
  const index = call.args.findIndex(
    (argument, at) => argument?.kind === 'list' && parameterOf(entry, at)?.list !== true,
  );
  const argument = call.args[index];
  if (argument === undefined) return true;
  const problem =
    entry.rows === undefined
      ? formulaProblem('list-not-here', { list: expressionText(argument) })
      : formulaProblem('function-rows', { name: entry.name });
  noteProblem(checking, problem, argument.span);
  return false;
}

function checkedArguments(
  checking: Checking,
  call: CallExpression,
  given: { readonly entry: FunctionEntry; readonly want: Want },
): readonly (Checked | undefined)[] | undefined {
  const { entry, want } = given;
  const before = checking.problems.length;
  const args = call.args.map((expression, index) => {
    const parameter = parameterOf(entry, index);
    if (expression === undefined || parameter === undefined) return undefined;
    if (parameter.type.kind === 'criterion') return undefined;
    const branch = branchWant(entry, index, want);
    return checkArgument(checking, { entry, parameter, expression }, branch);
  });
  return checking.problems.length > before ? undefined : args;
}

/** What a criterion is held against: the dimension of its letter's argument. */
function criterionDimension(given: CheckedArguments, of: string): Dimension | 'free' | undefined {
  const index = given.entry.parameters.findIndex(
    ({ name, type }) => name === of || (type.kind === 'same' && type.letter === of),
  );
  const type = given.args[index]?.type;
  if (type === undefined || type.kind === 'blank') return 'free';
  return isWords(type) ? undefined : (arithmeticDimension(type) ?? 'free');
}

function withCriteria(
  checking: Checking,
  given: CheckedArguments,
): readonly (Checked | undefined)[] | undefined {
  const before = checking.problems.length;
  const args = given.args.map((checked, index) => {
    const parameter = parameterOf(given.entry, index);
    const expression = given.call.args[index];
    if (parameter?.type.kind !== 'criterion' || expression === undefined) return checked;
    const dimension = criterionDimension(given, parameter.type.of);
    return checkCriterion(checking, { entry: given.entry, parameter, expression }, dimension);
  });
  return checking.problems.length > before ? undefined : args;
}

interface MeasureInUnit {
  readonly unit: Checked & { readonly kind: 'constant' };
  readonly measure: Checked;
  readonly written: Expression;
}

/** The unit argument with the measure before it, where a function takes the two together. */
function measureInUnit({ entry, call, args }: CheckedArguments): MeasureInUnit | undefined {
  const index = entry.parameters.findIndex(({ type }) => type.kind === 'unit');
  const [unit, measure, written] = [args[index], args[index - 1], call.args[index - 1]];
  if (unit?.kind !== 'constant' || measure === undefined || written === undefined) return undefined;
  if (entry.parameters[index - 1]?.type.kind !== 'any-quantity') return undefined;
  return { unit, measure, written };
}

/** A unit after a measure must be one of the measure's dimension: SHOW(length, sqft) is refused. */
function unitsFit(checking: Checking, given: CheckedArguments): boolean {
  const together = measureInUnit(given);
  if (together?.unit.value.kind !== 'text') return true;
  const { settings } = checking.scope;
  const dimension = arithmeticDimension(together.measure.type);
  const unit = unitOf(together.unit.value.text, settings);
  if (unit === undefined || dimension === undefined || dimension === 'free') return true;
  if (sameDimension(unit.dimension, dimension)) return true;
  const details = {
    unit: unit.word,
    unitFound: typeName(quantityType(unit.dimension)),
    argument: expressionText(together.written),
    found: typeName(together.measure.type),
    example: standardUnit(dimension, settings) ?? settings.units,
  };
  noteProblem(checking, formulaProblem('argument-unit-differs', details), together.unit.span);
  return false;
}

/** SUMIF(list, criterion) takes the values of its own list, which then count pieces as in SUM. */
function withOwnList(call: CallExpression): CallExpression {
  return ['SUMIF', 'AVERAGEIF'].includes(call.name) && call.args.length === 2
    ? { ...call, args: [...call.args, call.args[0]] }
    : call;
}

/** A function with its arguments. */
export function checkCall(
  checking: Checking,
  written: CallExpression,
  want: Want,
): Checked | undefined {
  const entry = entryOf(checking, written);
  if (entry === undefined) return undefined;
  if (!countFits(checking, written, entry) || !listAllowed(checking, written, entry)) {
    return undefined;
  }
  const call = withOwnList(written);
  const first = checkedArguments(checking, call, { entry, want });
  if (first === undefined) return undefined;
  const args = withCriteria(checking, { entry, call, args: first });
  if (args === undefined) return undefined;
  const given = { entry, call, args };
  const letters = letterDimensions(checking, given);
  if (letters === undefined || !unitsFit(checking, given)) return undefined;
  const type = resultType(checking, given, letters);
  return type === undefined ? undefined : { kind: 'call', entry, args, type, span: call.span };
}
