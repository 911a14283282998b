import { describe, expect, test } from 'vitest';
import { costDrivers, openSession } from '../../../extension/engine/index.ts';
import { driversInSlices } from '../../../extension/host/in-slices.ts';
import { driversView } from '../../../extension/host/views/drivers-view.ts';
import { mixView } from '../../../extension/host/views/mix-view.ts';
import { scheduleView } from '../../../extension/host/views/schedule-view.ts';
import { charge, cost, task } from '../../helpers/priced-job.ts';
import { doorSnapshot } from '../../helpers/sample-session.ts';

const door = doorSnapshot();
const empty = openSession('format = 1\n').snapshot();

function smallSession() {
  const head = 'format = 1\n\n[job]\ntitle = "Test"\n\nunits = "in"\ncurrency = "USD"\n\n';
  const rows = [
    cost('goods', '100 USD'),
    task('work', '120 min'),
    charge('hours', 'labour', { rate: '50 USD/h' }),
  ];
  return openSession(`${head}${rows.join('')}`);
}

describe('mixView', () => {
  test('has every coat of the door pair with two amounts and three tools', () => {
    const view = mixView(door);
    expect(view.message).toBe('');
    expect(view.coats.length).toBeGreaterThan(1);
    for (const { amounts, measures } of view.coats) {
      expect(amounts).toHaveLength(2);
      expect(measures).toHaveLength(3);
    }
    expect(view.facts).toContainEqual({ key: 'life', label: 'Pot life', value: 'planning only' });
    expect(view.total).toMatch(/^Together 7 pots/);
  });

  test('a job without resin says what would bring a coat', () => {
    expect(mixView(empty).message).toMatch(/^This job mixes no resin yet/);
  });
});

describe('scheduleView', () => {
  test('has first and last day, the hours, a bar for each task and a sentence for each', () => {
    const view = scheduleView(door);
    const facts = Object.fromEntries(view.facts.map(({ key, value }) => [key, value]));
    expect(facts['start']).toBe('Wed 2026-11-25');
    expect(facts['hours']).toBe('Mon to Fri, 8:00 to 16:00');
    const bars = new Set(view.drawing?.marks.map(({ row }) => row));
    for (const { id } of view.tasks) expect(bars).toContain(`task/${id}`);
    expect(view.words.length).toBeGreaterThanOrEqual(view.tasks.length);
    expect(view.notes[0]).toContain('Other jobs in the shop are not known of');
  });

  test('a job without a day says what is wanted', () => {
    expect(scheduleView(empty).message).toBe('The job has no tasks yet.');
  });
});

describe('driversView', () => {
  test('slices come to the same cells as one go, each with its bar and sentence', async () => {
    const session = smallSession();
    const whole = costDrivers(session);
    const sliced = await driversInSlices(session, 0);
    expect(sliced).toEqual(whole);
    const view = driversView(sliced, session.snapshot());
    expect(view.drivers).toHaveLength(3);
    const [first] = view.drivers;
    const row = `${first?.table ?? ''}/${first?.id ?? ''}/${first?.column ?? ''}`;
    expect(view.drawing?.marks.some((mark) => mark.kind === 'line' && mark.row === row)).toBe(true);
    expect(view.rows[row]).toContain('10 % less is');
  });

  test('a job that does not come to rest, and one that nothing moves, say so', () => {
    expect(driversView(undefined, empty).message).toContain('ask again');
    expect(driversView([], empty).message).toContain('No typed figure');
  });
});

describe('driversInSlices', () => {
  test('begins anew where the job changes under it, and gives up on one that never rests', async () => {
    const session = smallSession();
    const restless = {
      whatIf: session.whatIf,
      snapshot: () => ({ ...session.snapshot() }),
    };
    expect(await driversInSlices(restless, 0)).toBeUndefined();
  });
});
