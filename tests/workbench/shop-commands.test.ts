import { afterAll, beforeAll, expect, test } from 'vitest';
import { gridIn, type Grid } from './harness/grid.ts';
import { launch, until, type Workbench } from './harness/workbench.ts';

const book = 'shop.panelbook';
const job = 'lids.paneljob';

/** A block of a table, its cells as texts. */
function row(table: string, id: string, cells: Readonly<Record<string, string>>): string {
  const lines = Object.entries(cells).map(([key, text]) => `${key} = "${text}"\n`);
  return `[[${table}]]\nid = "${id}"\n\n${lines.join('')}\n`;
}

// Invented goods and prices.
const board = { form: 'sheet', length: '48 in', width: '24 in', kerf: '1/8 in' };
const bookText = [
  'format = 1\n\n[book]\ntitle = "Small shop"\ncurrency = "USD"\n\n',
  row('material', 'thick_board', { name: 'Thick board', ...board, thickness: '1/2 in' }),
  row('material', 'thin_board', { name: 'Thin board', ...board, thickness: '1/4 in' }),
  row('pack', 'thick_sheet', { material: 'thick_board', holds: '1152 sqin', price: '30 USD' }),
  row('pack', 'thin_sheet', { material: 'thin_board', holds: '1152 sqin', price: '20 USD' }),
].join('');

const jobText = [
  `format = 1\n\n[job]\ntitle = "Lids"\n\nunits = "in"\ncurrency = "USD"\n\nbook = "${book}"\n\n`,
  row('part', 'lid', {
    name: 'Lid',
    kind: 'base',
    material: 'thick_board',
    shape: 'rect(30 in, 24 in)',
  }),
].join('');

const prices = 'name,price\nThick board,33 USD\nthin_sheet,20 USD\nNo such board,5 USD\n';

let workbench: Workbench;

beforeAll(async () => {
  workbench = await launch({ files: { [book]: bookText, [job]: jobText, 'prices.csv': prices } });
});

afterAll(async () => {
  await workbench.close();
});

const lines = (text: string): ReturnType<Workbench['page']['locator']> =>
  workbench.page.locator('.quick-input-list .monaco-list-row', { hasText: text }).first();

/** Agrees to the lines that are ticked in the list that is open. */
async function agree(): Promise<void> {
  await workbench.page.locator('.quick-input-widget .monaco-button', { hasText: 'OK' }).click();
}

async function open(path: string): Promise<Grid> {
  return gridIn(workbench.page, await workbench.openGrid(path));
}

test('a price list is held against the book; what is agreed to is written as one edit', async () => {
  const grid = await open(book);
  await grid.frame.locator('[data-sheet="pack"]').waitFor();
  await workbench.command('Panelwright: Import Prices…');
  await lines('From a file…').click();
  const input = workbench.page.locator('.quick-input-widget input.input').first();
  await until('the folder', async () => (await input.inputValue()).endsWith('/'));
  await lines('prices.csv').click();
  await lines('Thick board').waitFor();
  expect(await lines('Thick board').innerText()).toMatch(/by its name[\s\S]*30\S* USD → 33\S* USD/);
  expect(await lines('No such board').innerText()).toContain('not taken');
  expect(await lines('thin_sheet').count()).toBe(0);
  await workbench.screenshot('shop-prices-dark');
  await agree();
  await grid.chooseSheet('pack');
  await until('the price', async () => (await grid.cell('thick_sheet', 'price')) === '33.00 USD');
  expect(await grid.cell('thin_sheet', 'price')).toBe('20.00 USD');
  await workbench.page.keyboard.press('Control+s');
  await until('the file', async () => (await workbench.bytes(book)).includes('price = "33 USD"'));
});

test('a material that cannot be had is substituted once its effect has been shown', async () => {
  const grid = await open(job);
  await grid.chooseSheet('part');
  await workbench.command('Panelwright: Substitute Material…');
  await lines('Thick board').click();
  await lines('Thin board').click();
  const dialog = workbench.page.locator('.monaco-dialog-box').first();
  await dialog.waitFor();
  const told = await dialog.innerText();
  expect(told).toContain('Put Thin board in the place of Thick board in one place?');
  expect(told).toMatch(/Lid, thickness: 1\/2 in → 1\/4 in/);
  expect(told).toContain('Price before tax: ');
  await workbench.screenshot('shop-substitute-dark');
  await dialog.locator('.monaco-button', { hasText: 'Substitute' }).click();
  await until('the material', async () => (await grid.cell('lid', 'material')) === 'Thin board');
  await workbench.page.keyboard.press('Control+s');
  await until('the file', async () => (await workbench.bytes(job)).includes('"thin_board"'));
});

test('what is left of the sheet that was opened is booked to the shelf', async () => {
  await workbench.command('Panelwright: Book Out Materials…');
  const offcut = lines('offcut of 17 7/8 in × 24 in');
  await offcut.waitFor();
  await workbench.screenshot('shop-book-out-dark');
  await agree();
  await workbench.page
    .locator('.notifications-toasts', { hasText: 'of the shelf are in the shop book' })
    .waitFor();
  const grid = await open(book);
  await grid.chooseSheet('pack');
  await until('the offcut', async () => (await grid.cell('thin_board_off', 'have')) === '1');
  expect(workbench.violations).toEqual([]);
});
