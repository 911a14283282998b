import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openSession } from '../../../../extension/engine/index.ts';
import { pricedJob, task } from '../../../helpers/priced-job.ts';
import { demoBook, doorPair, doorSession, replaced } from '../../../helpers/sample-session.ts';

describe('openWork', () => {
  test('adds up by phase and by person, with waiting apart', () => {
    const { work } = pricedJob(
      task('one', '30 min', { who: 'helper' }),
      task('two', '45 min', { kind: 'fill' }),
      task('three', '120 min', { kind: 'wait' }),
    );
    expect(work.totals).toMatchObject({ working: 85, elapsed: 85, waiting: 120, incomplete: 0 });
    expect(work.phases.map(({ key, working, waiting }) => [key, working, waiting])).toEqual([
      ['skin', 0, 120],
      ['finish', 55, 0],
      ['shop', 30, 0],
    ]);
    expect(work.people.map(({ key, working }) => [key, working])).toEqual([
      ['', 55],
      ['helper', 30],
    ]);
  });

  test('spreads of tasks that vary by themselves add by their squares', () => {
    const ranges = { low: '10 min', minutes: '15 min', high: '30 min' };
    const { work } = pricedJob(task('one', '15 min', ranges), task('two', '15 min', ranges));
    expect(work.totals.spread).toBeCloseTo((20 / 6) * Math.SQRT2, 9);
  });

  test('a task on no part is done as often as all panels are made, if that is one number', () => {
    const fit = { kind: 'fit', minutes: '10 min', setup: '0 min' };
    const panels = (count: string): string => `[[panel]]\nid = "rear"\n\nhands = "${count}"\n\n`;
    const pair = '[[panel]]\nid = "door"\n\nhands = "pair"\n\n';
    expect(pricedJob(pair, task('all', '10 min', fit)).work.totals.working).toBe(20);
    expect(pricedJob(pair, panels('pair'), task('all', '10 min', fit)).work.totals.working).toBe(
      20,
    );
    const unclear = pricedJob(pair, panels('left'), task('all', '10 min', fit)).work;
    expect(unclear.totals.working).toBe(10);
    expect(unclear.problems.map(({ code }) => code)).toEqual(['task-panels-unclear']);
  });

  test('an edit that moves no time gives the same object again', () => {
    const session = doorSession();
    const before = session.snapshot().work;
    session.setText(replaced(doorPair, 'name = "Gloves"', 'name = "Nitrile gloves"'));
    expect(session.snapshot().work).toBe(before);
  });

  const edits = fc.array(
    fc.constantFrom(
      ['tilt = "15 deg"', 'tilt = "19 deg"'],
      ['tilt = "19 deg"', 'tilt = "15 deg"'],
      ['hands = "pair"', 'hands = "left"'],
      ['hands = "left"', 'hands = "pair"'],
      ['kind = "sand"', 'kind = "wait"'],
      ['kind = "wait"', 'kind = "sand"'],
      ['on = "door_skin"', 'on = "door_cover"'],
      ['minutes = "75 min"', 'minutes = "x"'],
      ['layers = 2', 'layers = 3'],
      ['panel = "door"', 'panel = "gone"'],
      ['id = "mid_ring"', 'id = "other_ring"'],
    ),
    { minLength: 1, maxLength: 6 },
  );

  test(
    'edit after edit gives the work and the price that a fresh start gives',
    { timeout: 60_000 },
    () => {
      fc.assert(
        fc.property(edits, (list) => {
          const session = doorSession();
          let text = doorPair;
          for (const [before = '', after = ''] of list) {
            text = text.replace(before, after);
            session.setText(text);
            const now = session.snapshot();
            const fresh = openSession(text, demoBook).snapshot();
            expect(now.work).toEqual(fresh.work);
            expect(now.price).toEqual(fresh.price);
          }
        }),
        { numRuns: 12 },
      );
    },
  );
});
