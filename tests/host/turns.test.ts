import { describe, expect, test } from 'vitest';
import type { Steps } from '../../extension/engine/index.ts';
import { withTurns } from '../../extension/host/turns.ts';

describe('withTurns', () => {
  test('what waits has its turn between the steps, and the answer is that of the last', async () => {
    const order: string[] = [];
    function* working(): Steps<string> {
      order.push('first step');
      setTimeout(() => order.push('a message'), 0);
      yield;
      order.push('second step');
      return 'done';
    }
    expect(await withTurns(working(), 0)).toBe('done');
    expect(order).toEqual(['first step', 'a message', 'second step']);
  });
});
