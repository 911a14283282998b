import { describe, expect, test } from 'vitest';
import { readChange, readFile } from '../../../extension/engine/job/read-file.ts';
import { catalogue, openDesk } from '../../../extension/engine/session/desk.ts';
import { openGrounds } from '../../../extension/engine/session/grounds.ts';
import { demoBook, doorPair, replaced } from '../../helpers/sample-session.ts';

const first = readFile(doorPair);

describe('openDesk', () => {
  test('a problem list that says the same is the same list', () => {
    const desk = openDesk(first, openGrounds(demoBook, new Map()).now());
    const before = desk.snapshot(first);
    const next = readChange(first, replaced(doorPair, 'qty = 10', 'qty = 11'));
    desk.update(next, false);
    expect(desk.snapshot(next).problems).toBe(before.problems);
  });

  test('a reading that cannot be shown tells its own problems over the last good answers', () => {
    const desk = openDesk(first, openGrounds(demoBook, new Map()).now());
    const torn = readFile(`${doorPair}<<<<<<< a\n=======\n>>>>>>> b\n`);
    const snapshot = desk.snapshot(torn);
    expect(snapshot.shown).toBe(first);
    expect(snapshot.problems.every(({ problem }) => problem.code === 'conflict-markers')).toBe(
      true,
    );
    expect(snapshot.problems).not.toEqual([]);
  });

  test('without a shop book the demo book is used', () => {
    const grounds = openGrounds(undefined, new Map()).now();
    expect(openDesk(first, grounds).snapshot(first).book.origin).toBe('demo');
  });
});

test('the catalogue holds standard and trade functions', () => {
  for (const name of ['SUM', 'ROUNDUPTO', 'RING.DEPTH', 'RESIN.SOAK'])
    expect(catalogue.get(name)).toBeDefined();
});
