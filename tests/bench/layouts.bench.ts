import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, test } from 'vitest';
import type { Grid } from '../workbench/harness/grid.ts';
import { launch, type Workbench } from '../workbench/harness/workbench.ts';
import { load, record } from './figures.ts';
import { medianLine, settledGrid, settlingTimes } from './settling.ts';

const job = 'five-panel-sedan.paneljob';
const book = 'books/demo-shop.panelbook';

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

beforeAll(async () => {
  workbench = await launch({ files });
  grid = await settledGrid(workbench, { job, row: 'front_base', field: 'shape' });
});

afterAll(async () => {
  await workbench.close();
});

test('layouts settle in the workbench', { timeout: 600_000 }, async () => {
  const before = load();
  const shape = (index: number): string =>
    `roundrect(${(30 + index / 20).toFixed(2)} in, 17 in, 2 1/2 in)`;
  const times = await settlingTimes(grid, 'shape', shape);
  record(
    'layouts',
    [
      medianLine(times, 'painted', {
        what: 'Size to totals painted, layouts settling, p50',
        target: '≤ 25 ms',
      }),
      medianLine(times, 'next', {
        what: 'Size to totals of the live layouts painted, p50',
        target: '≤ 300 ms',
      }),
      medianLine(times, 'last', {
        what: 'Size to totals of the refined layouts painted, p50',
        target: '≤ 3000 ms',
      }),
    ],
    [before, load()],
  );
});
