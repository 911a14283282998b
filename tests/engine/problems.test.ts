import { describe, expect, test } from 'vitest';
import { keptProblems } from '../../extension/engine/problems.ts';

const same = (one: { said: string }, two: { said: string }): boolean => one.said === two.said;

describe('keptProblems', () => {
  test('the list stays the same object while each of its problems says the same', () => {
    const before = [{ said: 'too cold' }, { said: 'too thin' }];
    expect(keptProblems(before, [{ said: 'too cold' }, { said: 'too thin' }], same)).toBe(before);
  });

  test('one more, one fewer or another is another list', () => {
    const before = [{ said: 'too cold' }];
    for (const now of [[], [{ said: 'too hot' }], [{ said: 'too cold' }, { said: 'too hot' }]])
      expect(keptProblems(before, now, same)).toBe(now);
    const first = [{ said: 'too cold' }];
    expect(keptProblems(undefined, first, same)).toBe(first);
  });
});
