import { readFileSync } from 'node:fs';
import { setImmediate as turn } from 'node:timers/promises';
import { beforeAll, test } from 'vitest';
import type { Session } from '../../extension/engine/index.ts';
import { bundled } from './bundled.ts';
import { load, milliseconds, percentile, record, seconds, type FigureLine } from './figures.ts';
import { largeJob, rowCount } from './large-job.ts';

const folder = new URL('../../sample-jobs/', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, folder), 'utf8');
const book = read('books/demo-shop.panelbook');
/** Edits in which V8 still compiles what they run, and those after them. */
const edits = { first: 300, later: 600 };
const opens = 5;

let openSession: typeof import('./engine-program.ts').openSession;

beforeAll(async () => {
  ({ openSession } = (await bundled('engine-program')) as typeof import('./engine-program.ts'));
});

function opened(text: string): { readonly session: Session; readonly took: number } {
  const start = performance.now();
  const session = openSession(text, book);
  const { problems } = session.snapshot();
  const took = performance.now() - start;
  const faults = problems.filter(({ problem }) => problem.severity !== 'note').length;
  if (faults > 0) throw new Error(`The job has ${String(faults)} problems.`);
  return { session, took };
}

interface Time {
  /** By the clock, in ms. */
  readonly took: number;
  /** The part of it after which bill and price are there. */
  readonly totals: number;
  /** Of the processor, in ms: this one does not grow when the machine is busy elsewhere. */
  readonly worked: number;
}

function tilted(session: Session, ring: string, index: number): Time {
  const before = session.snapshot();
  const row = { table: 'part', id: ring };
  const text = `${String(10 + (index % 7))} deg`;
  const used = process.cpuUsage();
  const start = performance.now();
  const planned = session.plan([{ kind: 'set-cell', row, column: 'tilt', text }]);
  if (!planned.ok) throw new Error(planned.problem.message);
  const change = session.take(planned.value);
  const after = session.snapshot();
  const totals = performance.now() - start;
  // Problems are worked out when they are read first: a part of the edit, though its totals do not wait.
  const told = after.problems;
  const took = performance.now() - start;
  const { user, system } = process.cpuUsage(used);
  if (told.some(({ problem }) => problem.severity === 'error'))
    throw new Error('The tilt is at fault.');
  if (change.rows.size < 2) throw new Error('The tilt moved nothing.');
  if (before.bill === after.bill) throw new Error('The bill did not follow the tilt.');
  return { took, totals, worked: (user + system) / 1000 };
}

/**
 * Sets a ring's tilt to another value again and again. Every edit has a turn of its own, as one that is
 * typed has: what the machine puts off until nothing is to be done, such as looking for garbage, it
 * does between them.
 */
async function tiltTimes(session: Session, ring: string): Promise<readonly Time[]> {
  const times: Time[] = [];
  while (times.length < 20 + edits.first + edits.later) {
    await turn();
    times.push(tilted(session, ring, times.length));
  }
  return times.slice(20);
}

async function lines(name: string, text: string, target: string): Promise<readonly FigureLine[]> {
  const openTimes = Array.from({ length: opens }, () => opened(text).took);
  const times = await tiltTimes(opened(text).session, 'mid_ring');
  const rows = `${name}, ${rowCount(text).toLocaleString('en')} rows`;
  const [first, later] = [times.slice(0, edits.first), times.slice(edits.first)];
  const line = (what: string, one: number, target = ''): FigureLine => ({
    what: `${rows}: ${what}`,
    figure: milliseconds(one),
    target,
  });
  const at = (some: readonly Time[], share: number, of: keyof Time = 'took'): number =>
    percentile(
      some.map((time) => time[of]),
      share,
    );
  const early = `a tilt edited, the first ${edits.first} times`;
  return [
    { what: `${rows}: opened, median`, figure: seconds(percentile(openTimes, 0.5)), target: '' },
    line(`${early}, p50`, at(first, 0.5)),
    line(`${early}, p95`, at(first, 0.95)),
    line(`a tilt edited ${edits.later} times more, p50`, at(later, 0.5)),
    line(`a tilt edited ${edits.later} times more, p95`, at(later, 0.95), target),
    line('these until the totals are there, p50', at(later, 0.5, 'totals')),
    line('these until the totals are there, p95', at(later, 0.95, 'totals'), target),
    line('processor time of these, p50', at(later, 0.5, 'worked')),
    {
      what: `${rows}: these, p50, as a share of opening the job`,
      figure: `${((100 * at(later, 0.5)) / percentile(openTimes, 0.5)).toFixed(2)} %`,
      target: '',
    },
  ];
}

test('the engine alone', async () => {
  const before = load();
  const pair = await lines('Front-door pair', read('front-door-pair.paneljob'), '');
  const large = await lines(
    'Large job',
    largeJob(read('five-panel-sedan.paneljob'), 2000),
    '≤ 5 ms',
  );
  record('engine', [...pair, ...large], [before, load()]);
}, 600_000);
