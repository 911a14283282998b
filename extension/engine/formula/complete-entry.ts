import {
  length,
  plain,
  sameDimension,
  temperatureDifference,
  type Dimension,
} from '../units/dimension.ts';
import { completingUnit } from '../units/standard-units.ts';
import type { FunctionEntry, Parameter } from './catalogue.ts';
import { checkFormula } from './check.ts';
import type { Want } from './checking.ts';
import type { Expression } from './expression.ts';
import { parameterIndex, parameterOf } from './parameters.ts';
import { parseFormula } from './parse.ts';
import type { Scope } from './scope.ts';

interface Insertion {
  readonly at: number;
  readonly unit: string;
}

interface Entry {
  readonly text: string;
  readonly scope: Scope;
}

type Call = Expression & { readonly kind: 'call' };
type Binary = Expression & { readonly kind: 'binary' };
type Wanted = Dimension | undefined;

/** The dimension an expression already has; undefined for plain numbers and where it has a fault. */
function dimensionOf(expression: Expression | undefined, scope: Scope): Wanted {
  if (expression === undefined || isLone(expression)) return undefined;
  const type = checkFormula(expression, scope).checked?.type;
  if (type?.kind !== 'quantity' || sameDimension(type.dimension, plain)) return undefined;
  return type.dimension;
}

function isLone(expression: Expression): boolean {
  return expression.kind === 'quantity' && expression.unit === '';
}

/** `1/2`, which with a unit behind it is one literal. */
function isFraction(expression: Expression, { text }: Entry): boolean {
  if (expression.kind !== 'binary' || expression.operator !== '/') return false;
  const { left, right, span } = expression;
  const written = text.slice(span.start, span.end);
  if (!isLone(left) || !isLone(right) || !/^\d+\/\d+$/.test(written)) return false;
  const before = text.slice(0, span.start).trimEnd().at(-1) ?? '';
  const [top = '', bottom = ''] = written.split('/');
  return Number(top) < Number(bottom) && !'/^'.includes(before);
}

function completed(expression: Expression, wanted: Wanted, entry: Entry): Insertion | undefined {
  if (wanted === undefined) return undefined;
  const lone = expression.kind === 'quantity' && expression.unit === '';
  const zero = lone && expression.value.base === 0 && wanted.tag !== 'point';
  if (zero || (!lone && !isFraction(expression, entry))) return undefined;
  const unit = completingUnit(wanted, entry.scope.settings);
  if (unit === undefined) return undefined;
  // A number in brackets has them in its range; the unit stands at the digits.
  const { start, end } = expression.span;
  const digits = /[^\d.]*$/.exec(entry.text.slice(start, end))?.[0].length ?? 0;
  return { at: end - digits, unit };
}

/** What each side of + and − wants, given the other. */
function sumWants(binary: Binary, outer: Wanted, scope: Scope): readonly [Wanted, Wanted] {
  const [left, right] = [dimensionOf(binary.left, scope), dimensionOf(binary.right, scope)];
  const ofRight = left ?? outer;
  const ofLeft = right ?? outer;
  if (ofRight?.tag === 'point') return [ofLeft, temperatureDifference];
  return [ofLeft, ofRight];
}

function fromBinary(binary: Binary, outer: Wanted, entry: Entry): Insertion | undefined {
  const { left, right, operator } = binary;
  const { scope } = entry;
  const whole = completed(binary, outer, entry);
  if (whole !== undefined) return whole;
  let wants: readonly [Wanted, Wanted] = [undefined, undefined];
  if (operator === '+' || operator === '-') wants = sumWants(binary, outer, scope);
  else if (['=', '<>', '<', '<=', '>', '>='].includes(operator)) {
    wants = [dimensionOf(right, scope), dimensionOf(left, scope)];
  }
  return insertionIn(left, wants[0], entry) ?? insertionIn(right, wants[1], entry);
}

function letterDimension(call: Call, given: FunctionEntry, letter: string, scope: Scope): Wanted {
  for (const [index, argument] of call.args.entries()) {
    const type = parameterOf(given, index)?.type;
    if (type?.kind !== 'same' || type.letter !== letter) continue;
    const found =
      argument?.kind === 'list' ? listDimension(argument, scope) : dimensionOf(argument, scope);
    if (found !== undefined) return found;
  }
  return undefined;
}

function listDimension(list: Expression & { readonly kind: 'list' }, scope: Scope): Wanted {
  const resolved = scope.list(list.form, list.row, list.kinds, list.column);
  if (!resolved.found) return undefined;
  for (const { type } of resolved.thing.cells) {
    if (type.kind === 'quantity' && !sameDimension(type.dimension, plain)) return type.dimension;
  }
  return undefined;
}

function branchDimension(call: Call, given: FunctionEntry, outer: Wanted, scope: Scope): Wanted {
  if (given.result.kind !== 'branches') return undefined;
  const branches = given.result.arguments;
  const found = call.args
    .filter((_, index) => branches.includes(parameterIndex(given, index) ?? -1))
    .map((argument) => dimensionOf(argument, scope));
  return found.find((dimension) => dimension !== undefined) ?? outer;
}

function argumentWant(
  call: Call,
  at: { readonly index: number; readonly parameter: Parameter; readonly entry: FunctionEntry },
  outer: Wanted,
  scope: Scope,
): Wanted {
  const { type } = at.parameter;
  const { result } = at.entry;
  switch (type.kind) {
    case 'quantity':
      return type.dimensions.some((one) => sameDimension(one, plain))
        ? undefined
        : type.dimensions[0];
    case 'shape-or-length':
      return length;
    case 'same':
      return (
        letterDimension(call, at.entry, type.letter, scope) ??
        (result.kind === 'same' && result.letter === type.letter ? outer : undefined)
      );
    case 'value': {
      const index = parameterIndex(at.entry, at.index);
      const branch = result.kind === 'branches' && result.arguments.includes(index ?? -1);
      return branch ? branchDimension(call, at.entry, outer, scope) : undefined;
    }
    default:
      return undefined;
  }
}

function fromCall(call: Call, outer: Wanted, entry: Entry): Insertion | undefined {
  const { scope } = entry;
  const given = scope.catalogue.get(call.name);
  for (const [index, argument] of call.args.entries()) {
    const parameter = given === undefined ? undefined : parameterOf(given, index);
    if (argument === undefined || given === undefined || parameter === undefined) continue;
    const want = argumentWant(call, { index, parameter, entry: given }, outer, scope);
    const found = insertionIn(argument, want, entry);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The first lone number that wants a unit. */
function insertionIn(expression: Expression, wanted: Wanted, entry: Entry): Insertion | undefined {
  switch (expression.kind) {
    case 'quantity':
      return completed(expression, wanted, entry);
    case 'unary':
      return insertionIn(expression.operand, wanted, entry);
    case 'percent':
      return insertionIn(expression.operand, undefined, entry);
    case 'binary':
      return fromBinary(expression, wanted, entry);
    case 'call':
      return fromCall(expression, wanted, entry);
    case 'text':
    case 'path':
    case 'list':
      return undefined;
  }
}

function namesAsListed(text: string, expression: Expression, scope: Scope): string {
  let named = text;
  const visit = (one: Expression | undefined): void => {
    if (one === undefined) return;
    if (one.kind === 'unary' || one.kind === 'percent') visit(one.operand);
    if (one.kind === 'binary') {
      visit(one.left);
      visit(one.right);
    }
    if (one.kind !== 'call') return;
    const { start, end } = one.nameSpan;
    const name = scope.catalogue.get(one.name)?.name;
    // Capitals and small letters change, never the length, so all ranges stay true.
    if (name?.length === end - start) named = named.slice(0, start) + name + named.slice(end);
    one.args.forEach(visit);
  };
  visit(expression);
  return named;
}

/** More lone numbers than this in one formula are left as they are. */
const most = 200;

/**
 * A formula as it is stored after somebody typed it: a lone number where a length or another dimension
 * is wanted gets the job's unit, function names get the spelling of the catalogue. Nothing else changes,
 * and a formula with a fault is left as it is.
 *
 * @example completeEntry('=length + 0.5', scope, 'any') // '=length + 0.5in'
 */
export function completeEntry(text: string, scope: Scope, wanted: Want): string {
  const first = parseFormula(text, scope.settings).expression;
  if (first === undefined) return text;
  const outer =
    wanted !== 'any' && wanted.kind === 'quantity' && !sameDimension(wanted.dimension, plain)
      ? wanted.dimension
      : undefined;
  let stored = namesAsListed(text, first, scope);
  for (let count = 0; count < most; count++) {
    const { expression } = parseFormula(stored, scope.settings);
    if (expression === undefined) break;
    const found = insertionIn(expression, outer, { text: stored, scope });
    if (found === undefined) break;
    const next = stored.slice(0, found.at) + found.unit + stored.slice(found.at);
    if (parseFormula(next, scope.settings).expression === undefined) break;
    stored = next;
  }
  return stored;
}
