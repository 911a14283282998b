import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, test } from 'vitest';
import { launch, type Workbench } from '../workbench/harness/workbench.ts';
import { load, record, type FigureLine } from './figures.ts';
import { medianLine, settledGrid, settlingTimes } from './settling.ts';

const book = 'books/demo-shop.panelbook';

/** Jobs with two sizes of sheet, cloth and vinyl off the roll, and a base whose size is typed. */
const pair = {
  job: 'front-door-pair.paneljob',
  row: 'door_base',
  rest: '15 in, 2 in',
  about: '73 rows',
} as const;
const sedan = {
  job: 'five-panel-sedan.paneljob',
  row: 'front_base',
  rest: '17 in, 2 1/2 in',
  about: '158 rows',
} as const;

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

function fromStock(job: string): string {
  return textOf(job).replace('\nbook = ', '\nuse_stock = "yes"\nbook = ');
}

const files = {
  [pair.job]: fromStock(pair.job),
  [sedan.job]: fromStock(sedan.job),
  [book]: `${textOf(book)}${offcut}`,
};

let workbench: Workbench;

beforeAll(async () => {
  workbench = await launch({ files });
});

afterAll(async () => {
  await workbench.close();
});

async function linesOf(
  { job, row, rest, about }: typeof pair | typeof sedan,
  targets: readonly [string, string, string],
): Promise<readonly FigureLine[]> {
  const grid = await settledGrid(workbench, { job, row, field: 'shape' });
  const shape = (index: number): string => `roundrect(${(28 + index / 20).toFixed(2)} in, ${rest})`;
  const times = await settlingTimes(grid, 'shape', shape);
  const line = (key: 'painted' | 'next' | 'last', words: string, target: string): FigureLine =>
    medianLine(times, key, { what: `${about}: size to totals ${words} painted, p50`, target });
  return [
    line('painted', 'with layouts settling', targets[0]),
    line('next', 'of the live layouts', targets[1]),
    line('last', 'of the refined layouts', targets[2]),
  ];
}

test('layouts settle in the workbench', { timeout: 600_000 }, async () => {
  const before = load();
  const lines = [
    ...(await linesOf(pair, ['≤ 25 ms', '≤ 300 ms', '≤ 3000 ms'])),
    ...(await linesOf(sedan, ['', '≤ 300 ms', '≤ 3000 ms'])),
  ];
  record('layouts', lines, [before, load()]);
});
