import { describe, expect, test } from 'vitest';
import { catalogue } from '../../extension/engine/index.ts';
import { filesBelow, sourceText } from '../helpers/source-files.ts';

const checks = filesBelow('tests/handbook')
  .filter((path) => path.endsWith('.test.ts'))
  .filter((path) => !path.endsWith('/coverage.test.ts'))
  .map(sourceText);

/** Functions that no check calls. */
function unchecked(names: readonly string[], texts: readonly string[]): readonly string[] {
  return names.filter((name) => !texts.some((text) => text.includes(`${name}(`)));
}

const trade = [...catalogue.values()]
  .filter(({ group }) => group !== 'standard')
  .map(({ name }) => name);

describe('checks from outside', () => {
  test('every function of the trade has one', () => {
    expect(trade.length).toBeGreaterThan(60);
    expect(unchecked(trade, checks)).toEqual([]);
  });

  test('a function without one would be told', () => {
    expect(unchecked([...trade, 'RING.COLOUR'], checks)).toEqual(['RING.COLOUR']);
  });

  test('there are more than 110 of them, and each file names where its figures are from', () => {
    const cases = checks.map((text) => text.match(/\btest(\.each)?\(/g)?.length ?? 0);
    expect(cases.reduce((sum, count) => sum + count, 0)).toBeGreaterThan(110);
    for (const text of checks) {
      expect(text).toMatch(
        /no source|from memory|geometry|definition|worked|\.com|\.net|\.ca|NIST/,
      );
    }
  });

  test('each figure is asked of a formula, not of the code behind it', () => {
    const imports = checks.flatMap((text) =>
      [...text.matchAll(/from '([^']+)'/g)].map(([, from]) => from),
    );
    const behind = imports.filter(
      (from) => from?.includes('/engine/') === true && !from.endsWith('/engine/index.ts'),
    );
    expect([...new Set(behind)]).toEqual([]);
  });
});
