import { afterAll, beforeAll, expect, test } from 'vitest';
import { gridIn, type Grid } from './harness/grid.ts';
import { jobOfParts } from './harness/sample.ts';
import { launch, until, type Workbench } from './harness/workbench.ts';

const count = 100;
const file = 'many.paneljob';
const job = jobOfParts(count);
const edited = job.replace(/name = "Part (\d+)"/g, 'name = "Q$1"');

let workbench: Workbench;
let grid: Grid;

beforeAll(async () => {
  workbench = await launch({ files: { [file]: job } });
  grid = gridIn(workbench.page, await workbench.openGrid(file));
  await grid.chooseSheet('part');
});

afterAll(async () => {
  await workbench.close();
});

test('a hundred cells typed as fast as keys can come are all in the file', async () => {
  const { keyboard } = workbench.page;
  await grid.goTo('part_000', 'name');
  for (let index = 0; index < count; index += 1) {
    await keyboard.type(`Q${String(index).padStart(3, '0')}`);
    await keyboard.press('Enter');
  }
  await until('the last cell', async () => (await grid.cell('part_099', 'name')) === 'Q099');
  await keyboard.press('Control+s');
  await workbench.page.locator('.tab.dirty').waitFor({ state: 'detached' });
  expect(await workbench.bytes(file)).toBe(edited);
});

test('each of them is an undo step of its own, back to the first bytes', async () => {
  const { keyboard } = workbench.page;
  await grid.goTo('part_000', 'name');
  for (let index = 0; index < count; index += 1) await keyboard.press('Control+z');
  await until('the first cell', async () => (await grid.cell('part_000', 'name')) === 'Part 000');
  await keyboard.press('Control+s');
  await workbench.page.locator('.tab.dirty').waitFor({ state: 'detached' });
  expect(await workbench.bytes(file)).toBe(job);
});

test('the content security policy refused nothing', () => {
  expect(workbench.violations).toEqual([]);
});
