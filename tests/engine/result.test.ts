import { describe, expect, test } from 'vitest';
import { problemMaker } from '../../extension/engine/problems.ts';
import { failed, ok, unreachable } from '../../extension/engine/result.ts';

const problem = problemMaker({ 'too-deep': '{what} is {depth} deep.' });

describe('ok and failed', () => {
  test('an answer carries its value, a failure the one problem in its way', () => {
    expect(ok(3)).toEqual({ ok: true, value: 3 });
    const one = problem('too-deep', { what: 'The ring', depth: '4 in' });
    expect(failed(one)).toEqual({
      ok: false,
      problem: { code: 'too-deep', message: 'The ring is 4 in deep.', severity: 'error' },
    });
  });

  test('a detail that is not given stays visible in the sentence', () => {
    expect(problem('too-deep', { what: 'The ring' }).message).toBe('The ring is {depth} deep.');
  });
});

describe('unreachable', () => {
  test('reaching it is a bug in the program', () => {
    expect(() => unreachable('ring' as never)).toThrow(/Unreachable case: "ring"/);
  });
});
