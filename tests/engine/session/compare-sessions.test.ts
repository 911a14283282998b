import { describe, expect, test } from 'vitest';
import { openSession } from '../../../extension/engine/index.ts';
import {
  compareSnapshots,
  type ComparedJobs,
} from '../../../extension/engine/session/compare-sessions.ts';
import { charge, cost, task } from '../../helpers/priced-job.ts';
import { doorPair, doorSnapshot, replaced } from '../../helpers/sample-session.ts';

const head = 'format = 1\n\n[job]\ntitle = "Test"\n\nunits = "in"\ncurrency = "USD"\n\n';

function compared(before: string, after: string): ComparedJobs {
  const was = openSession(before);
  const result = compareSnapshots(was.snapshot(), openSession(after).snapshot(), was);
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
}

// 2 h at 50 and 100 of goods, 10 % on both: 220.
const rows = [
  cost('goods', '100 USD'),
  task('work', '120 min'),
  charge('hours', 'labour', { rate: '50 USD/h' }),
  charge('spare', 'contingency', { percent: '10 %' }),
];
const job = head + rows.join('');

describe('compareSnapshots', () => {
  test('an hour more of work costs its rate and the share on it', () => {
    const found = compared(job, job.replace('120 min', '180 min'));
    expect(found.rows).toHaveLength(1);
    expect(found.rows[0]).toMatchObject({
      id: 'work',
      before: { minutes: 120, charge: 10000 },
      after: { minutes: 180, charge: 15000 },
      cells: [
        { column: 'minutes', label: 'time', shownBefore: '2 h', shownAfter: '3 h', own: 5500 },
      ],
    });
    const figures = Object.fromEntries(
      found.figures.map(({ key, before, after }) => [key, after - before]),
    );
    expect(figures).toEqual({
      materials: 0,
      labour: 5000,
      price: 5500,
      tax: 0,
      total: 5500,
      hours: 60,
    });
    expect(
      found.followers.map(({ id, before, after }) => [id, before.charge, after.charge]),
    ).toEqual([
      ['hours', 10000, 15000],
      ['spare', 2000, 2500],
    ]);
  });

  test('a row that came tells what it alone does, and one that went what its going does', () => {
    const more = job + cost('freight', '10 USD');
    const came = compared(job, more);
    expect(came.rows[0]).toMatchObject({ kind: 'added', id: 'freight', own: 1100 });
    const went = compared(more, job);
    expect(went.rows[0]).toMatchObject({ kind: 'removed', id: 'freight', own: -1100 });
    expect(went.rows[0]?.after.charge).toBeUndefined();
    expect(went.materials).toMatchObject([{ charge: { before: 1000, after: undefined } }]);
  });

  test('a renamed row takes what it took', () => {
    const found = compared(job, job.replaceAll('"goods"', '"wares"'));
    expect(found.rows).toMatchObject([{ id: 'wares', formerId: 'goods', cells: [] }]);
    expect(found.rows[0]?.before).toEqual(found.rows[0]?.after);
  });

  test('values are shown in the units of their own version', () => {
    const cell = { size: '203.2 mm' };
    const ring = (size: string): string => head + cost('ring', '1 USD', { ...cell, size });
    const found = compared(ring('203.2 mm'), ring('9 in').replace('units = "in"', 'units = "mm"'));
    expect(found.settings).toMatchObject([
      { column: 'units', shownBefore: 'in', shownAfter: 'mm' },
    ]);
    expect(found.rows[0]?.cells).toMatchObject([
      { before: '203.2 mm', shownBefore: '8 in', after: '9 in', shownAfter: '228.6 mm' },
    ]);
  });

  test('a longer sample door moves rows that nobody touched, and the sums of the bill', () => {
    const before = doorSnapshot();
    const after = doorSnapshot(replaced(doorPair, 'roundrect(26 in', 'roundrect(28 in'));
    const result = compareSnapshots(before, after);
    if (!result.ok) throw new Error(result.problem.message);
    const { rows: changed, followers, materials, figures } = result.value;
    expect(changed).toHaveLength(1);
    expect(changed[0]?.cells[0]?.own).toBeUndefined();
    expect(followers.length).toBeGreaterThan(0);
    const sum = materials.reduce(
      (all, { charge: one }) => all + (one.after ?? 0) - (one.before ?? 0),
      0,
    );
    const [first] = figures;
    expect(sum).toBe((first?.after ?? 0) - (first?.before ?? 0));
  });

  test('a version that cannot be read is refused', () => {
    const torn = openSession(`${job}<<<<<<< a\n=======\n>>>>>>> b\n`).snapshot();
    expect(compareSnapshots(openSession(job).snapshot(), torn).ok).toBe(false);
  });
});
