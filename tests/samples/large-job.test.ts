import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openSession } from '../../extension/engine/session/session.ts';
import { largeJob, rowCount } from '../bench/large-job.ts';

const folder = new URL('../../sample-jobs/', import.meta.url);
const sedan = readFileSync(new URL('five-panel-sedan.paneljob', folder), 'utf8');
const book = readFileSync(new URL('books/demo-shop.panelbook', folder), 'utf8');

test('one copy of the sedan is the sedan', () => {
  expect(largeJob(sedan, 1)).toBe(sedan);
});

test('the sedan three times over calculates without a problem', () => {
  // A job is charged once.
  const charges = sedan.match(/^\[\[charge\]\]/gm)?.length ?? 0;
  const thrice = 3 * rowCount(sedan) - 2 * charges;
  const text = largeJob(sedan, thrice);
  expect(rowCount(text)).toBe(thrice);
  const { problems, bill } = openSession(text, book).snapshot();
  expect(problems.map(({ problem }) => problem.message)).toEqual([]);
  expect(bill.totals.panels).toBe(15);
  // A row of each copy that leans on a measure, a driver and another row of its own copy.
  expect(text).toContain('DRIVER.CLEARANCE(on.depth, mid_03.depth, mid_03.magnet, on.tilt');
  expect(text).toContain('job.mid_behind_03');
});
