import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, test } from 'vitest';
import { conflictHunks } from '../../extension/engine/sharing/conflict-text.ts';
import { buildMergeDriver } from '../helpers/merge-driver.ts';
import { cellTexts, differences } from '../helpers/merge-pairs.ts';
import { bothApplied, mergedPair, pairOf, type Pair } from '../helpers/merge-trial.ts';
import { load, milliseconds, percentile, record } from './figures.ts';
import { largeJob, rowCount } from './large-job.ts';

const folder = mkdtempSync(join(tmpdir(), 'panelwright-merge-bench-'));
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

function sample(name: string): string {
  return readFileSync(new URL(`../../sample-jobs/${name}.paneljob`, import.meta.url), 'utf8');
}

function write(pair: Pair): readonly string[] {
  const texts = { base: pair.base, ours: pair.ours.text, theirs: pair.theirs.text };
  return Object.entries(texts).map(([name, text]) => {
    const file = join(folder, name);
    writeFileSync(file, text);
    return file;
  });
}

/** What the driver says of its own time, started anew for each pair as git starts it. */
function driverTimes(job: string, count: number): readonly number[] {
  const program = join(folder, 'merge-driver.cjs');
  buildMergeDriver(program);
  return Array.from({ length: count }, (_, seed) => {
    const files = write(pairOf(job, seed + 1));
    const args = [program, ...files, '-o', join(folder, 'out'), '--json'];
    const { stdout } = spawnSync(process.execPath, args, { encoding: 'utf8' });
    return (JSON.parse(stdout) as { readonly milliseconds: number }).milliseconds;
  });
}

function withoutDriver(pair: Pair): string | undefined {
  const [base = '', ours = '', theirs = ''] = write(pair);
  const done = spawnSync('git', ['merge-file', '-p', ours, base, theirs], { encoding: 'utf8' });
  return done.status === 0 ? done.stdout : undefined;
}

/** Clean and right: without a conflict, and the cells are those that both branches' gestures give. */
function isRight(text: string | undefined, expected: string): boolean {
  if (text === undefined || conflictHunks(text).length > 0) return false;
  return differences(cellTexts(text, false), cellTexts(expected, false)).length === 0;
}

interface Shares {
  readonly pairs: number;
  readonly lines: Share;
  readonly cells: Share;
}

interface Share {
  readonly clean: number;
  readonly right: number;
}

function shares(job: string, count: number): Shares {
  const lines = { clean: 0, right: 0 };
  const cells = { clean: 0, right: 0 };
  let pairs = 0;
  for (let seed = 1; seed <= count; seed++) {
    const pair = pairOf(job, seed);
    const expected = bothApplied(pair);
    // Where both renamed rows, one order of gestures cannot tell what is right.
    if (expected === undefined) continue;
    pairs++;
    const byLine = withoutDriver(pair);
    const { text, conflicts } = mergedPair(pair);
    if (byLine !== undefined) lines.clean++;
    if (isRight(byLine, expected)) lines.right++;
    if (conflicts.length === 0) cells.clean++;
    if (isRight(text, expected)) cells.right++;
  }
  return { pairs, lines, cells };
}

test('how long the driver takes', { timeout: 300_000 }, () => {
  const before = load();
  const large = largeJob(sample('front-door-pair'), 300);
  const times = driverTimes(large, 30);
  const rows = `A job of ${String(rowCount(large))} rows merged, by the driver’s own clock`;
  record(
    'merge-time',
    [
      { what: `${rows}: quickest`, figure: milliseconds(Math.min(...times)), target: '' },
      { what: `${rows}: p50`, figure: milliseconds(percentile(times, 0.5)), target: '≤ 200 ms' },
      { what: `${rows}: p95`, figure: milliseconds(percentile(times, 0.95)), target: '' },
    ],
    [before, load()],
  );
});

// Two thousand merges, half of them by programs that are started for one.
test('how many merges are clean, and right', { timeout: 900_000 }, () => {
  const before = load();
  const found = shares(sample('two-ring-door'), 1000);
  const share = (count: number): string => `${((100 * count) / found.pairs).toFixed(1)} %`;
  const pairs = `${found.pairs.toLocaleString('en')} pairs of branches`;
  const line = (how: string, count: number) => ({
    what: `${pairs}, ${how}`,
    figure: share(count),
    target: '',
  });
  record(
    'merge-shares',
    [
      line('line by line: clean', found.lines.clean),
      line('line by line: clean and right', found.lines.right),
      line('cell by cell: clean', found.cells.clean),
      line('cell by cell: clean and right', found.cells.right),
    ],
    [before, load()],
  );
});
