import { describe, expect, test } from 'vitest';
import { deviations } from '../../../extension/engine/formula/standard/deviations.ts';
import { answered } from '../../helpers/formula-answer.ts';
import { openFormulaVectors } from './openformula-vectors.ts';

const different = new Map(deviations.map((one) => [one.formula, one]));

/** Faults that checking finds before anything is calculated. */
const refusals = ['cannot-calculate', 'cannot-compare', 'branches-differ'];

function answerOf(formula: string): string {
  const result = answered(`=${formula}`);
  if (!result.ok) {
    if (refusals.includes(result.problem.code)) return 'refused';
    return result.problem.code === 'cell-blank' ? 'blank' : 'ERR';
  }
  const { value } = result.value;
  if (value.kind === 'yes-no') return value.yes ? 'TRUE' : 'FALSE';
  if (value.kind === 'quantity') return String(value.base);
  return value.kind === 'text' ? value.text : value.kind;
}

/** The vectors give ten digits or fewer. */
function matches(answer: string, wanted: string): boolean {
  if (answer === wanted || (wanted === 'ERR' && answer === 'refused')) return true;
  if (wanted.trim() === '' || answer.trim() === '') return false;
  const [got, expected] = [Number(answer), Number(wanted)];
  return Math.abs(got - expected) <= 1e-8 * Math.max(1, Math.abs(expected));
}

describe('standard functions and operators', () => {
  const alike = openFormulaVectors.filter(([formula]) => !different.has(formula));

  test('most of the vectors hold', () => {
    expect(alike.length).toBeGreaterThan(180);
  });

  test.each(alike)('%s is %s', (formula, wanted) => {
    const answer = answerOf(formula);
    expect(matches(answer, wanted), `${formula} gives ${answer}`).toBe(true);
  });

  test.each(deviations.map((one) => [one.formula, one.here, one.why]))(
    '%s is %s on purpose: %s',
    (formula, here) => {
      expect(matches(answerOf(formula), here)).toBe(true);
    },
  );

  test('every deviation from a vector differs in truth', () => {
    const vectors = new Map(openFormulaVectors);
    const idle = deviations.filter(({ formula, here }) => vectors.get(formula) === here);
    expect(idle).toEqual([]);
  });
});
