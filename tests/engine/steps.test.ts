import { describe, expect, test } from 'vitest';
import { atOnce, whenAsked, type Steps } from '../../extension/engine/steps.ts';

describe('atOnce', () => {
  test('all steps are done, and their answer is given', () => {
    const done: number[] = [];
    function* counting(): Steps<string> {
      for (let step = 1; step <= 3; step += 1) {
        done.push(step);
        yield;
      }
      return 'counted';
    }
    expect(atOnce(counting())).toBe('counted');
    expect(done).toEqual([1, 2, 3]);
  });

  test('what a step throws is thrown', () => {
    function* failing(): Steps<never> {
      yield;
      throw new Error('no such step');
    }
    expect(() => atOnce(failing())).toThrow('no such step');
  });
});

describe('whenAsked', () => {
  test('the work is done when it is asked for, once, whatever comes of it', () => {
    let times = 0;
    const found = whenAsked((): string | undefined => {
      times += 1;
      return undefined;
    });
    expect(times).toBe(0);
    expect([found(), found()]).toEqual([undefined, undefined]);
    expect(times).toBe(1);
  });
});
