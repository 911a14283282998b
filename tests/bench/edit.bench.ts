import { afterAll, beforeAll, test } from 'vitest';
import { gridIn, type Grid } from '../workbench/harness/grid.ts';
import { launch, until, type Workbench } from '../workbench/harness/workbench.ts';
import { load, milliseconds, percentile, record } from './figures.ts';

const sample = 'front-door-pair.paneljob';
const ring = 'mid_ring';
const warmUps = 10;
const edits = 60;

let workbench: Workbench;
let grid: Grid;

beforeAll(async () => {
  workbench = await launch();
  grid = gridIn(workbench.page, await workbench.openGrid(sample));
  await grid.chooseSheet('part');
  await grid.goTo(ring, 'name');
  await until('the row card', async () => (await grid.field('tilt')) !== '');
  // The controls' own library comes after the first paint, and what knobs do after that.
  await workbench.page.waitForTimeout(3000);
});

afterAll(async () => {
  await workbench.close();
});

/** Runs in the page: the time from the last edit sent to the frame that shows what it changed. */
function sentToPainted(): number | undefined {
  const [sent] = performance.getEntriesByName('panelwright:edit');
  // A patch that no edit of this page caused has null there.
  const painted = performance
    .getEntriesByName('panelwright:painted')
    .find((mark) => typeof (mark as PerformanceMark).detail === 'number');
  return sent === undefined || painted === undefined
    ? undefined
    : painted.startTime - sent.startTime;
}

function forgetMarks(): void {
  performance.clearMarks();
}

async function timeOf(key: string, text: string): Promise<number> {
  await grid.frame.evaluate(forgetMarks);
  await grid.typeField(key, text);
  return until(`${key} to be painted`, () => grid.frame.evaluate(sentToPainted));
}

/** Everything that a tilt moves, as one text. */
async function totals(): Promise<string> {
  return JSON.stringify([await grid.figures(), await grid.bill()]);
}

test('an edit in the workbench', { timeout: 600_000 }, async () => {
  const before = load();
  const tilts: number[] = [];
  const notes: number[] = [];
  let moved = 0;
  for (let index = 0; index < warmUps + edits; index += 1) {
    const note = await timeOf('note', `Note ${String(index)}`);
    const was = await totals();
    const tilt = await timeOf('tilt', index % 2 === 0 ? '19 deg' : '15 deg');
    if ((await totals()) !== was) moved += 1;
    if (index < warmUps) continue;
    notes.push(note);
    tilts.push(tilt);
  }
  if (moved < warmUps + edits) throw new Error(`Only ${String(moved)} tilts moved the totals.`);
  const ratio = percentile(tilts, 0.95) / percentile(notes, 0.95);
  const line = (what: string, figure: string, target: string) => ({ what, figure, target });
  record(
    'edit',
    [
      line('Tilt to totals painted, p50', milliseconds(percentile(tilts, 0.5)), '≤ 25 ms'),
      line('Tilt to totals painted, p95', milliseconds(percentile(tilts, 0.95)), ''),
      line('Note to its cell painted, p50', milliseconds(percentile(notes, 0.5)), ''),
      line('Note to its cell painted, p95', milliseconds(percentile(notes, 0.95)), ''),
      line('Tilt p95 ÷ note p95', ratio.toFixed(2), '≤ 2.5'),
    ],
    [before, load()],
  );
});
