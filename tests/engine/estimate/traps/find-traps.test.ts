import { describe, expect, test } from 'vitest';
import { allTraps } from '../../../../extension/engine/estimate/traps/all-traps.ts';
import { openTraps } from '../../../../extension/engine/estimate/traps/find-traps.ts';
import { openSession } from '../../../../extension/engine/session/session.ts';
import { demoBook, doorPair, replaced } from '../../../helpers/sample-session.ts';
import { more, part, row, told } from '../../../helpers/told-traps.ts';

describe('a job in order', () => {
  test('steps into no trap', () => {
    expect(told(doorPair)).toEqual([]);
    expect(allTraps.length).toBeGreaterThan(12);
  });
});

describe('openTraps', () => {
  test('an edit asks again only the rows it reaches', () => {
    const session = openSession(doorPair, demoBook);
    const traps = openTraps();
    const ask = (): unknown => {
      const { workbook, book, settings } = session.snapshot();
      return traps.update(workbook, book, settings);
    };
    const first = ask();
    expect(ask()).toBe(first);
    session.setText(replaced(doorPair, 'cutout = "5 5/8 in"', 'cutout = "7 in"'));
    expect(ask()).toMatchObject([{ code: 'cutout-not-below-frame' }]);
    session.setText(doorPair);
    expect(ask()).toEqual([]);
  });

  test('a material that changes is told at the rows that take it', () => {
    const mat = (weight: string): string =>
      more(
        `${row('material', 'veil', { name: 'Veil', form: 'roll', width: '38 in', weight })}\n${part('back', { kind: 'mat', on: 'door_skin', material: 'veil' })}`,
      );
    const session = openSession(mat('300 g/m2'), demoBook);
    const told = (): readonly string[] =>
      session.snapshot().problems.map(({ problem }) => problem.code);
    expect(told()).not.toContain('glass-too-light');
    session.setText(mat('50 g/m2'));
    expect(told()).toContain('glass-too-light');
  });
});

test('the traps of a table have a bit each in a whole number of 32 bits, whose last is its sign', () => {
  const counts = new Map<string, number>();
  for (const table of allTraps.flatMap(({ tables }) => tables))
    counts.set(table, (counts.get(table) ?? 0) + 1);
  expect(Math.max(...counts.values())).toBeLessThan(32);
});
