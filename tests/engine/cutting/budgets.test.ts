import { describe, expect, test } from 'vitest';
import { budgetOf, outlineBudgetOf } from '../../../extension/engine/cutting/budgets.ts';

describe('budgetOf', () => {
  test('more effort is more work, and the usual effort is to refine', () => {
    const works = (['quick', 'live', 'refine', 'long'] as const).map((effort) => budgetOf(effort));
    expect([...works].sort((a, b) => a - b)).toEqual(works);
    expect(budgetOf(undefined)).toBe(budgetOf('refine'));
  });

  test('two pieces are not searched as long as two hundred', () => {
    expect(budgetOf('refine', 2)).toBeLessThan(budgetOf('refine', 20));
    expect(budgetOf('refine', 200)).toBe(budgetOf('refine'));
  });
});

describe('outlineBudgetOf', () => {
  test('more effort is more work', () => {
    expect(outlineBudgetOf('live')).toBeLessThan(outlineBudgetOf(undefined));
    expect(outlineBudgetOf('refine')).toBeLessThan(outlineBudgetOf('long'));
  });
});
