import { readFileSync } from 'node:fs';
import { beforeAll, test } from 'vitest';
import type { Session } from '../../extension/engine/index.ts';
import { bundled } from './bundled.ts';
import { load, milliseconds, percentile, record, seconds, type FigureLine } from './figures.ts';
import { largeJob, rowCount } from './large-job.ts';

const folder = new URL('../../sample-jobs/', import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, folder), 'utf8');
const book = read('books/demo-shop.panelbook');
const edits = 300;
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
  /** Of the processor, in ms: this one does not grow when the machine is busy elsewhere. */
  readonly worked: number;
}

/** Sets a ring's tilt to another value again and again. */
function tiltTimes(session: Session, ring: string): readonly Time[] {
  return Array.from({ length: edits + 20 }, (_, index) => {
    const before = session.snapshot();
    const row = { table: 'part', id: ring };
    const text = `${String(10 + (index % 7))} deg`;
    const used = process.cpuUsage();
    const start = performance.now();
    const planned = session.plan([{ kind: 'set-cell', row, column: 'tilt', text }]);
    if (!planned.ok) throw new Error(planned.problem.message);
    const change = session.take(planned.value);
    const after = session.snapshot();
    // Problems are worked out when they are read first: a part of the edit, though its totals do not wait.
    const told = after.problems;
    const took = performance.now() - start;
    if (told.some(({ problem }) => problem.severity === 'error'))
      throw new Error('The tilt is at fault.');
    if (change.rows.size < 2) throw new Error('The tilt moved nothing.');
    if (before.bill === after.bill) throw new Error('The bill did not follow the tilt.');
    const { user, system } = process.cpuUsage(used);
    return { took, worked: (user + system) / 1000 };
  }).slice(20);
}

function lines(name: string, text: string, target: string): readonly FigureLine[] {
  const openTimes = Array.from({ length: opens }, () => opened(text).took);
  const times = tiltTimes(opened(text).session, 'mid_ring');
  const rows = `${name}, ${rowCount(text).toLocaleString('en')} rows`;
  const took = times.map((time) => time.took);
  const worked = times.map((time) => time.worked);
  return [
    { what: `${rows}: opened, median`, figure: seconds(percentile(openTimes, 0.5)), target: '' },
    {
      what: `${rows}: a tilt edited, p50`,
      figure: milliseconds(percentile(took, 0.5)),
      target: '',
    },
    { what: `${rows}: a tilt edited, p95`, figure: milliseconds(percentile(took, 0.95)), target },
    {
      what: `${rows}: processor time of it, p50`,
      figure: milliseconds(percentile(worked, 0.5)),
      target: '',
    },
  ];
}

test('the engine alone', () => {
  const before = load();
  const pair = lines('Front-door pair', read('front-door-pair.paneljob'), '');
  const large = lines('Large job', largeJob(read('five-panel-sedan.paneljob'), 2000), '≤ 5 ms');
  record('engine', [...pair, ...large], [before, load()]);
}, 600_000);
