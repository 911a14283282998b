import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judge } from '../../../../extension/engine/estimate/checks/judge.ts';
import { length, plain } from '../../../../extension/engine/units/dimension.ts';
import type { Quantity } from '../../../../extension/engine/units/quantity.ts';

const inch = 25.4;
const inches = (count: number): Quantity => ({ base: count * inch, dimension: length });
const share = (percent: number): Quantity => ({ base: percent / 100, dimension: plain });

describe('judge', () => {
  test.each([
    [0.5, 'pass'],
    [5 / 16, 'pass'],
    [5 / 16 - 0.001, 'near'],
    [0.25, 'near'],
    [0.25 - 1e-13, 'near'],
    [0.249, 'fail'],
  ])('%d in where at least 1/4 in is wanted: %s', (value, outcome) => {
    expect(judge({ value: inches(value), least: inches(0.25) })?.outcome).toBe(outcome);
  });

  test('the closer limit tells the margin', () => {
    const both = { least: inches(1), most: inches(3) };
    expect(judge({ value: inches(2.8), ...both })).toMatchObject({ side: 'most' });
    expect(judge({ value: inches(1.2), ...both })?.margin.base).toBeCloseTo(0.2 * inch, 9);
    expect(judge({ value: inches(3.5), ...both })?.margin.base).toBeCloseTo(-0.5 * inch, 9);
  });

  test('what is no length is near within a tenth of its limit, or within what is asked', () => {
    const most = share(100);
    expect(judge({ value: share(89), most })?.outcome).toBe('pass');
    expect(judge({ value: share(91), most })?.outcome).toBe('near');
    expect(judge({ value: share(91), most, near: share(5) })?.outcome).toBe('pass');
    expect(judge({ value: share(100), most, near: share(0) })?.outcome).toBe('pass');
  });

  test('without a limit there is nothing to say', () => {
    expect(judge({ value: inches(1) })).toBeUndefined();
  });

  test('inches and millimetres come out alike, and more room is never worse', () => {
    const rank = { fail: 0, near: 1, pass: 2 } as const;
    const size = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(size, size, fc.double({ min: 0, max: 5, noNaN: true }), (value, least, more) => {
        const one = judge({ value: inches(value), least: inches(least) });
        const other = judge({ value: inches(value + more), least: inches(least) });
        if (one === undefined || other === undefined) throw new Error('No judgement.');
        expect(rank[other.outcome]).toBeGreaterThanOrEqual(rank[one.outcome]);
      }),
    );
  });
});
