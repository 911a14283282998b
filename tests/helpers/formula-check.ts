import { expect } from 'vitest';
import { checkFormula } from '../../extension/engine/formula/check.ts';
import type { CheckOutcome } from '../../extension/engine/formula/checked.ts';
import type { Want } from '../../extension/engine/formula/checking.ts';
import { parseFormula } from '../../extension/engine/formula/parse.ts';
import { typeName } from '../../extension/engine/formula/value-type.ts';
import { smallScope } from './formula-scope.ts';

const scope = smallScope();

/** A formula checked in the small job. */
export function checked(text: string, wanted: Want = 'any'): CheckOutcome {
  const { expression, problems } = parseFormula(text, scope.settings);
  if (expression === undefined) throw new Error(problems[0]?.message ?? 'nothing');
  return checkFormula(expression, scope, wanted);
}

/** What a formula comes to, or the sentence why it is refused. */
export function typeOf(text: string, wanted: Want = 'any'): string {
  const { checked: tree, problems } = checked(text, wanted);
  return tree === undefined ? (problems[0]?.message ?? '') : typeName(tree.type);
}

/** The sentence a formula is refused with. */
export function faultOf(text: string, wanted: Want = 'any'): string {
  const outcome = checked(text, wanted);
  expect(outcome.checked).toBeUndefined();
  return outcome.problems[0]?.message ?? '';
}
