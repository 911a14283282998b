import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, test } from 'vitest';
import { gridIn, type Grid } from '../workbench/harness/grid.ts';
import { launch, until, type Workbench } from '../workbench/harness/workbench.ts';
import { load, milliseconds, percentile, record, type FigureLine } from './figures.ts';

const job = 'five-panel-sedan.paneljob';
const book = 'books/demo-shop.panelbook';
const warmUps = 5;
const edits = 30;

const textOf = (path: string): string =>
  readFileSync(new URL(`../../sample-jobs/${path}`, import.meta.url), 'utf8');

/** A rest of the board that the doors are cut from, beside the two sheets it is sold in. */
const offcut = `
[[pack]]
id = "hardboard_rest"

material = "hardboard_6"
holds = "6 sqft"
price = "5 USD"
length = "36 in"
width = "24 in"

have = 1
`;

const files = {
  [job]: textOf(job).replace('\nbook = ', '\nuse_stock = "yes"\nbook = '),
  [book]: `${textOf(book)}${offcut}`,
};

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
  workbench = await launch({ files });
  grid = gridIn(workbench.page, await workbench.openGrid(job));
  await grid.chooseSheet('part');
  await grid.goTo('front_base', 'name');
  await until('the row card', async () => (await grid.field('shape')) !== '');
  await workbench.page.waitForTimeout(3000);
  await allSettled();
});

afterAll(async () => {
  await workbench.close();
});

interface Times {
  /** From the edit sent to its totals painted, the layouts marked as settling. */
  readonly painted: number;
  /** From the edit sent to the totals of the live layouts painted. */
  readonly live: number;
  /** From the edit sent to the totals of the refined layouts painted. */
  readonly refined: number;
}

/** Runs in the page: when the edit's own patch was painted, and when the first and the last layouts came. */
function timesOfEdit(): Times | undefined {
  const [sent] = performance.getEntriesByName('panelwright:edit');
  const painted = performance.getEntriesByName('panelwright:painted');
  const own = painted.find((mark) => typeof (mark as PerformanceMark).detail === 'number');
  const words = document.querySelector('.headline-notes')?.textContent ?? '';
  const last = painted.at(-1);
  if (sent === undefined || own === undefined || last === own || last === undefined)
    return undefined;
  if (words.includes('settling')) return undefined;
  const next = painted[painted.indexOf(own) + 1] ?? last;
  const since = (mark: PerformanceEntry): number => mark.startTime - sent.startTime;
  return { painted: since(own), live: since(next), refined: since(last) };
}

function forgetMarks(): void {
  performance.clearMarks();
}

test('layouts settle in the workbench', { timeout: 600_000 }, async () => {
  const before = load();
  const times: Times[] = [];
  for (let index = 0; index < warmUps + edits; index += 1) {
    await grid.frame.evaluate(forgetMarks);
    // Each size is new, or its layout would be remembered.
    const shape = `roundrect(${(30 + index / 20).toFixed(2)} in, 17 in, 2 1/2 in)`;
    await grid.typeField('shape', shape);
    const time = await until('the layouts to settle', () => grid.frame.evaluate(timesOfEdit));
    if (index >= warmUps) times.push(time);
  }
  const line = (what: string, key: keyof Times, target: string): FigureLine => ({
    what,
    figure: milliseconds(
      percentile(
        times.map((time) => time[key]),
        0.5,
      ),
    ),
    target,
  });
  record(
    'layouts',
    [
      line('Size to totals painted, layouts settling, p50', 'painted', '≤ 25 ms'),
      line('Size to totals of the live layouts painted, p50', 'live', '≤ 300 ms'),
      line('Size to totals of the refined layouts painted, p50', 'refined', '≤ 3000 ms'),
    ],
    [before, load()],
  );
});
