import { afterAll, beforeAll, expect, test } from 'vitest';
import { gridIn, type Grid } from './harness/grid.ts';
import { jobOfParts } from './harness/sample.ts';
import { launch, until, type Workbench } from './harness/workbench.ts';

const file = 'beside.paneljob';
const job = jobOfParts(3);

let workbench: Workbench;
let grid: Grid;

beforeAll(async () => {
  workbench = await launch({
    files: { [file]: job },
    size: { width: 1700, height: 900 },
    // Quotes are typed as they are, one at a time.
    settings: { 'editor.autoClosingQuotes': 'never', 'editor.autoClosingBrackets': 'never' },
  });
  grid = gridIn(workbench.page, await workbench.openGrid(file));
  await workbench.command('Panelwright: Open as Text');
  await workbench.page.locator('.monaco-editor .view-line').first().waitFor();
  grid = gridIn(workbench.page, await workbench.gridFrame());
  await grid.chooseSheet('part');
});

afterAll(async () => {
  await workbench.close();
});

/** Puts the cursor on a line of the text view; on a slow machine Enter may come before the list has. */
async function goToLine(line: number): Promise<void> {
  const { page } = workbench;
  const { keyboard } = page;
  const input = page.locator('.quick-input-widget input.input').first();
  const place = page.locator('.statusbar-item', { hasText: `Ln ${String(line)},` }).first();
  await until(`the cursor on line ${String(line)}`, async () => {
    await page.locator('.monaco-editor .view-lines').first().click();
    await keyboard.press('Control+g');
    await input.waitFor();
    await input.fill(`:${String(line)}`);
    await keyboard.press('Enter');
    await input.waitFor({ state: 'hidden', timeout: 3000 }).catch(() => keyboard.press('Escape'));
    return place
      .waitFor({ timeout: 3000 })
      .then(() => true)
      .catch(() => false);
  });
}

/** Replaces a whole line of the text view, counted from 1. */
async function typeLine(line: number, text: string): Promise<void> {
  const { keyboard } = workbench.page;
  await goToLine(line);
  await keyboard.press('Home');
  await keyboard.press('Shift+End');
  await keyboard.insertText(text);
}

function lineOf(text: string): number {
  return job.slice(0, job.indexOf(text)).split('\n').length;
}

const banner = (): Promise<string | null> =>
  grid.frame.locator('[data-banner]').getAttribute('data-banner');

test('what is typed in the text shows in the grid beside it', async () => {
  await typeLine(lineOf('name = "Part 001"'), 'name = "From the text"');
  await until('the grid', async () => (await grid.cell('part_001', 'name')) === 'From the text');
});

test('what is typed in the grid shows in the text beside it', async () => {
  await grid.typeCell('part_002', 'name', 'From the grid');
  await workbench.page.locator('.view-line', { hasText: 'From the grid' }).waitFor();
});

test('a broken row is told and locked while the others live, and is back when mended', async () => {
  await typeLine(lineOf('name = "Part 000"'), 'name = "Part 000');
  const row = grid.frame.locator('[data-row^="part_000"].locked, [data-row].locked').first();
  await row.waitFor({ state: 'attached' });
  await grid.typeCell('part_002', 'name', 'Still alive');
  await workbench.page.locator('.view-line', { hasText: 'Still alive' }).waitFor();
  await typeLine(lineOf('name = "Part 000"'), 'name = "Mended"');
  await until('the row', async () => (await grid.cell('part_000', 'name')) === 'Mended');
});

test('a text that is no job leaves the last good grid, read-only, until it is mended', async () => {
  const { keyboard } = workbench.page;
  await workbench.page.locator('.monaco-editor .view-lines').first().click();
  await keyboard.press('Control+a');
  await keyboard.insertText('Nonsense');
  await until('the banner', async () => (await banner()) === 'unreadable');
  expect(await grid.cell('part_001', 'name')).toBe('From the text');
  await until('the grid', async () => {
    await keyboard.press('Control+z');
    return (await banner()) === 'ready';
  });
  expect(await grid.cell('part_001', 'name')).toBe('From the text');
});

test('conflict markers are told before anything else', async () => {
  await typeLine(2, '<<<<<<< ours');
  await until('the banner', async () => (await banner()) === 'conflicted');
  await workbench.page.keyboard.press('Control+z');
  await typeLine(2, '# no conflict');
  await until('the grid', async () => (await banner()) === 'ready');
});

test('the content security policy refused nothing', () => {
  expect(workbench.violations).toEqual([]);
});
