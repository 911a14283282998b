import { afterAll, beforeAll, test } from 'vitest';
import { gridIn, type Grid } from '../workbench/harness/grid.ts';
import { launch, until, type Workbench } from '../workbench/harness/workbench.ts';
import { load, milliseconds, percentile, record } from './figures.ts';

const sample = 'two-ring-door.paneljob';
const warmUps = 5;
const edits = 30;

let workbench: Workbench;
let grid: Grid;

async function allSettled(): Promise<void> {
  await until(
    'the shapes to settle',
    async () => !(await notes()).includes('settling') || undefined,
  );
}

/** What the headline says that the figures leave out or rest on. */
async function notes(): Promise<string> {
  return grid.frame.locator('.headline-notes').innerText();
}

beforeAll(async () => {
  workbench = await launch();
  grid = gridIn(workbench.page, await workbench.openGrid(sample));
  await grid.chooseSheet('part');
  await grid.goTo('mid_ring', 'name');
  await until('the row card', async () => (await grid.field('tilt')) !== '');
  await workbench.page.waitForTimeout(3000);
  await allSettled();
});

afterAll(async () => {
  await workbench.close();
});

interface Times {
  /** From the edit sent to its totals painted, by the closed form. */
  readonly painted: number;
  /** From the edit sent to the totals of the settled skin painted. */
  readonly settled: number;
  /** From the edit sent to the totals painted when the layouts have followed too. */
  readonly all: number;
}

/** Runs in the page: when the edit's own patch was painted, and when the last word came. */
function timesOfEdit(): Times | undefined {
  const [sent] = performance.getEntriesByName('panelwright:edit');
  const painted = performance.getEntriesByName('panelwright:painted');
  const own = painted.find((mark) => typeof (mark as PerformanceMark).detail === 'number');
  const words = document.querySelector('.headline-notes')?.textContent ?? '';
  const last = painted.at(-1);
  if (sent === undefined || own === undefined || last === own || last === undefined)
    return undefined;
  if (words.includes('settling')) return undefined;
  // A skin's answer is the first that comes after the edit's own patch; layouts wait for it.
  const next = painted[painted.indexOf(own) + 1] ?? last;
  const since = (mark: PerformanceEntry): number => mark.startTime - sent.startTime;
  return { painted: since(own), settled: since(next), all: since(last) };
}

function forgetMarks(): void {
  performance.clearMarks();
}

test('a skin settles in the workbench', { timeout: 600_000 }, async () => {
  const before = load();
  const times: Times[] = [];
  for (let index = 0; index < warmUps + edits; index += 1) {
    await grid.frame.evaluate(forgetMarks);
    // Each tilt is new, or the answer would be remembered.
    await grid.typeField('tilt', `${(10 + index / 10).toFixed(1)} deg`);
    const time = await until('the skin to settle', () => grid.frame.evaluate(timesOfEdit));
    if (index >= warmUps) times.push(time);
  }
  const at = (key: keyof Times, share: number): string =>
    milliseconds(
      percentile(
        times.map((time) => time[key]),
        share,
      ),
    );
  record(
    'settled',
    [
      {
        what: 'Tilt to totals of the closed form painted, p50',
        figure: at('painted', 0.5),
        target: '≤ 25 ms',
      },
      {
        what: 'Tilt to totals of the settled skin painted, p50',
        figure: at('settled', 0.5),
        target: '≤ 300 ms',
      },
      { what: 'Tilt to totals with all layouts painted, p50', figure: at('all', 0.5), target: '' },
    ],
    [before, load()],
  );
});
