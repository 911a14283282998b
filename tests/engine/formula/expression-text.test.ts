import { describe, expect, test } from 'vitest';
import { expressionText } from '../../../extension/engine/formula/expression-text.ts';
import { parseFormula } from '../../../extension/engine/formula/parse.ts';

function quoted(text: string): string {
  const { expression } = parseFormula(text);
  return expression === undefined ? 'nothing' : expressionText(expression);
}

describe('expressionText', () => {
  // The parser refuses a literal with a unit before ^, and a fraction behind / or ^, as read two ways.
  test.each([
    ['=(-(15deg)) ^ 2', '(-15 deg) ^ 2'],
    ['=(length ^ (15deg)) ^ 2', '(length ^ 15 deg) ^ 2'],
    ['=2 / (-(1/16in))', '2 / (-1/16 in)'],
    ['=2 / (1/16in)', '2 / (1/16 in)'],
    ['=length ^ 2', 'length ^ 2'],
  ])('%s is quoted as %s', (written, text) => {
    expect(quoted(written)).toBe(text);
  });
});
