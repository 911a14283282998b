import { sameDimension } from '../units/dimension.ts';
import { untyped, type Checking } from './checking.ts';
import { formulaProblem } from './formula-problems.ts';
import { anglesAgree, sideNames, sideSuggestion, type Sides } from './sides.ts';
import type { ValueType } from './value.ts';
import { arithmeticDimension, isWords } from './value-type.ts';

/** What a type is compared as: words with words, numbers with numbers. */
function comparedAs(type: ValueType): string {
  if (isWords(type)) return 'words';
  return type.kind === 'zero' ? 'quantity' : type.kind;
}

function comparable(sides: Sides): boolean {
  const [left, right] = [sides.left.type, sides.right.type];
  const kinds = [left, right].map(comparedAs);
  if (kinds.includes('blank')) return true;
  if (kinds[0] !== kinds[1] || kinds[0] === 'shape') return false;
  if (left.kind !== 'quantity' || right.kind !== 'quantity') return true;
  return (
    sameDimension(left.dimension, right.dimension) ||
    anglesAgree(sides, left.dimension, right.dimension)
  );
}

/** Zero fits every dimension but a temperature, where 0 degF and 0 degC are two things. */
function zeroDegrees(sides: Sides): boolean {
  const types = [sides.left.type, sides.right.type];
  return (
    types.some(({ kind }) => kind === 'zero') &&
    types.some((type) => type.kind === 'quantity' && type.dimension.tag === 'point')
  );
}

/** Two values compared: of one kind and one dimension, whatever the operator. */
export function checkComparison(checking: Checking, sides: Sides): ValueType | undefined {
  if (zeroDegrees(sides)) {
    return untyped(checking, formulaProblem('zero-temperature'), sides.expression.span);
  }
  if (comparable(sides)) return { kind: 'yes-no' };
  const left = arithmeticDimension(sides.left.type) ?? 'free';
  const right = arithmeticDimension(sides.right.type) ?? 'free';
  const hint = sideSuggestion(sides, left, right, checking.scope.settings);
  const problem = formulaProblem('cannot-compare', { ...sideNames(sides), suggestion: hint });
  return untyped(checking, problem, sides.expression.span);
}
