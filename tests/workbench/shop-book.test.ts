import { afterAll, beforeAll, expect, test } from 'vitest';
import { gridIn, type Grid } from './harness/grid.ts';
import { launch, until, type Workbench } from './harness/workbench.ts';

const book = 'shop.panelbook';
const job = 'door.paneljob';

// Invented goods and prices.
const bookText = `format = 1

[book]
title = "Small shop"
date = 2026-11-02
currency = "USD"

[[material]]
id = "shop_board"

name = "Shop board"
form = "sheet"

thickness = "1/4 in"

length = "96 in"
width = "48 in"

order = 1000

[[pack]]
id = "shop_board_sheet"

material = "shop_board"
holds = "4608 sqin"
price = "40 USD"

order = 1000
`;

const jobText = `format = 1

[job]
title = "Lid"

units = "in"
currency = "USD"

book = "shop.panelbook"

[[part]]
id = "lid"

name = "Lid"
kind = "base"

material = "shop_board"

shape = "rect(24 in, 12 in)"
`;

const asked = 'asked.paneljob';

const askedText = `${jobText}
[[ask]]
id = "outline"

name = "Outline of the lid"
sets = ["lid.shape"]
`;

let workbench: Workbench;
let grid: Grid;

beforeAll(async () => {
  workbench = await launch({ files: { [book]: bookText, [job]: jobText, [asked]: askedText } });
  grid = gridIn(workbench.page, await workbench.openGrid(book));
});

afterAll(async () => {
  await workbench.close();
});

test('a shop book opens in the grid: its sheets, its figures, no bill', async () => {
  await grid.frame.locator('[data-sheet="pack"]').waitFor();
  expect(await grid.figure('packs')).toContain('1');
  expect(await grid.frame.locator('[data-pane="bill"]').count()).toBe(0);
  await grid.chooseSheet('pack');
  expect(await grid.cell('shop_board_sheet', 'price')).toBe('40.00 USD');
});

test('a price typed in it is one line of the file, saved and undone', async () => {
  const { page } = workbench;
  await grid.typeCell('shop_board_sheet', 'price', '44');
  // Straight after the last key: what is still on its way is saved too.
  await page.keyboard.press('Control+s');
  const saved = bookText.replace('40 USD', '44 USD');
  await until('the file', async () => (await workbench.bytes(book)) === saved);
  await page.locator('.tab.dirty').waitFor({ state: 'detached' });
  await page.keyboard.press('Control+z');
  await until('the old price', async () =>
    (await grid.cell('shop_board_sheet', 'price')).startsWith('40'),
  );
});

test('what is not saved yet is shown with its effect on the jobs of the book', async () => {
  const { page } = workbench;
  await workbench.command('Panelwright: Show Effect on Jobs');
  const line = page.locator('.quick-input-list .monaco-list-row', { hasText: '→' }).first();
  await line.waitFor();
  expect(await line.innerText()).toContain('44.00 USD → 40.00 USD');
  await page.keyboard.press('Escape');
});

test('a template’s questions are asked with what the job comes to, and go when they are answered', async () => {
  const { page } = workbench;
  const frame = await workbench.openGrid(asked);
  await workbench.command('Panelwright: Answer Template’s Questions…');
  const dialog = frame.locator('[data-dialog="asks"]');
  await dialog.locator('.totals').waitFor();
  await dialog.locator('[name="outline"]').fill('rect(20 in, 10 in)');
  await dialog.locator('[data-action="dialog-agree"]').click();
  await page.locator('.tab.dirty').first().waitFor();
  await page.keyboard.press('Control+s');
  await until('the file', async () => !(await workbench.bytes(asked)).includes('[[ask]]'));
  expect(await workbench.bytes(asked)).toContain('shape = "rect(20 in, 10 in)"');
});

test('the content security policy refused nothing', () => {
  expect(workbench.violations).toEqual([]);
});
