import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { largeJob } from '../bench/large-job.ts';
import { gridIn } from './harness/grid.ts';
import { launch, repository, until, type Workbench } from './harness/workbench.ts';

const file = 'long.paneljob';
const input = '.quick-input-widget input.input';

let workbench: Workbench;

beforeAll(async () => {
  const text = await readFile(join(repository, 'sample-jobs/five-panel-sedan.paneljob'), 'utf8');
  workbench = await launch({ files: { [file]: largeJob(text, 2000) } });
});

afterAll(async () => {
  await workbench.close();
});

test('a palette that is opened while a long job opens stays open, and what is typed is typed there', async () => {
  const { page } = workbench;
  await workbench.clickFile(file);
  await page.keyboard.press('F1');
  await page.locator(input).first().waitFor();
  await page.keyboard.type('Panelwright: Where', { delay: 60 });
  const frame = await workbench.gridFrame();
  await frame.locator('[data-cell]').first().waitFor();
  await page.keyboard.type(' From', { delay: 60 });
  expect(await page.locator(input).first().inputValue()).toBe('>Panelwright: Where From');
  await page.keyboard.press('Escape');
  const grid = gridIn(page, frame);
  await grid.chooseSheet('part');
  await grid.typeCell('mid_ring', 'tilt', '13 deg');
  await until('the tilt', async () => (await grid.cell('mid_ring', 'tilt')).startsWith('13'));
});

test('a job that is opened to stay takes what is typed at once', async () => {
  const { page } = workbench;
  const before = await workbench.gridFrame();
  await page
    .locator('.explorer-folders-view .monaco-list-row', { hasText: 'front-door-pair' })
    .dblclick();
  const frame = await until('the keyboard in the other grid', async () => {
    const found = await workbench.gridFrame();
    if (found === before || (await found.locator('[data-cell]').count()) === 0) return undefined;
    return (await found.evaluate<boolean>('document.hasFocus()')) && found;
  });
  await page.keyboard.press('F2');
  await until('an open cell', async () => (await frame.locator('.cell-entry.open').count()) > 0);
});
