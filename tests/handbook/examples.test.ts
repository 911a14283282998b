import { describe, expect, test } from 'vitest';
import { calcAnswer } from '../../extension/command-line/calc.ts';
import { tradeFunctions } from '../../extension/engine/trade/trade-functions.ts';

const settings = { units: 'in', currency: 'USD' } as const;

describe('examples of the trade functions, calculated as the command line does', () => {
  const alone = tradeFunctions.filter(({ rows }) => rows === undefined);

  test.each(alone.map(({ example }) => [example.formula, example.shows]))(
    '%s shows %s',
    (formula, shows) => {
      const answer = calcAnswer(formula, settings);
      expect(answer.ok ? answer.text : answer.problem).toBe(shows);
    },
  );
});
