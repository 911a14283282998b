import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clockText,
  dateOf,
  dayOf,
  dayText,
  layWork,
  momentOf,
  nextOpen,
  weekWordOf,
  type ShopHours,
} from '../../../../extension/engine/estimate/schedule/calendar.ts';

const hours: ShopHours = {
  days: new Set(['mon', 'tue', 'wed', 'thu', 'fri']),
  from: 8 * 60,
  to: 16 * 60,
  shut: new Set([dayOf('2026-11-26') ?? 0]),
};

function at(date: string, clock: number): number {
  return momentOf(dayOf(date) ?? 0, clock * 60);
}

describe('dayOf', () => {
  // ISO 8601 calendar: 1970-01-01 was a Thursday, 2000-02-29 a Tuesday, 2026-11-25 a Wednesday.
  test.each([
    ['1970-01-01', 0, 'thu'],
    ['2000-02-29', 11_016, 'tue'],
    ['2026-11-25', 20_782, 'wed'],
    ['1969-12-31', -1, 'wed'],
  ])('%s', (date, day, week) => {
    expect(dayOf(date)).toBe(day);
    expect(dateOf(day)).toBe(date);
    expect(weekWordOf(day)).toBe(week);
  });

  test('what is no day of the calendar is none', () => {
    expect(['2026-02-29', '2026-13-01', 'tomorrow', ''].map(dayOf)).toEqual([
      undefined,
      undefined,
      undefined,
      undefined,
    ]);
  });

  test('every day has its date, and the next day the next', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200_000, max: 200_000 }), (day) => {
        expect(dayOf(dateOf(day))).toBe(day);
        const [one, two] = [new Date(day * 86_400_000), dateOf(day)];
        if (one.getUTCFullYear() > 999) expect(one.toISOString().slice(0, 10)).toBe(two);
      }),
    );
  });

  test('is read as people write it', () => {
    expect(dayText(dayOf('2026-11-25') ?? 0)).toBe('Wed 2026-11-25');
    expect(clockText(8 * 60 + 5)).toBe('8:05');
  });
});

describe('layWork', () => {
  test('goes on the next working day, over a day that is shut and the weekend', () => {
    const laid = layWork(20 * 60, at('2026-11-25', 12), { hours, whole: false });
    expect(laid).toEqual([
      { from: at('2026-11-25', 12), to: at('2026-11-25', 16) },
      { from: at('2026-11-27', 8), to: at('2026-11-27', 16) },
      { from: at('2026-11-30', 8), to: at('2026-11-30', 16) },
    ]);
  });

  test('a coat is not begun on a day that it does not fit into', () => {
    const laid = layWork(90, at('2026-11-25', 15), { hours, whole: true });
    expect(laid).toEqual([{ from: at('2026-11-27', 8), to: at('2026-11-27', 9.5) }]);
    // Longer than any day: it is begun all the same.
    expect(layWork(600, at('2026-11-25', 15), { hours, whole: true })).toHaveLength(3);
  });

  test('a shop that never opens takes no work', () => {
    const never = { ...hours, days: new Set<never>() };
    expect(nextOpen(at('2026-11-25', 9), never)).toBeUndefined();
    expect(layWork(60, at('2026-11-25', 9), { hours: never, whole: false })).toEqual([]);
  });

  test('no minute is lost, none is worked outside the hours, and none twice', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 6000 }),
        fc.integer({ min: 0, max: 20_000 }),
        (minutes, late) => {
          const laid = layWork(minutes, at('2026-11-20', 0) + late, { hours, whole: false });
          expect(laid.reduce((sum, { from, to }) => sum + to - from, 0)).toBeCloseTo(minutes, 6);
          laid.forEach(({ from, to }, index) => {
            expect(nextOpen(from, hours)).toBe(from);
            expect(to - from).toBeLessThanOrEqual(8 * 60);
            expect(from).toBeGreaterThanOrEqual(laid[index - 1]?.to ?? 0);
          });
        },
      ),
    );
  });
});
