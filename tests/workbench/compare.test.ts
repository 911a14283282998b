import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { gridIn, type Grid } from './harness/grid.ts';
import { launch, repository, until, type Workbench } from './harness/workbench.ts';

const job = readFileSync(join(repository, 'sample-jobs/front-door-pair.paneljob'), 'utf8');
const now = job
  .replace('tilt = "15 deg"', 'tilt = "18 deg"')
  .replace('roundrect(26 in', 'roundrect(27 in')
  .concat('\n[[part]]\nid = "badge"\n\nname = "Badge"\nkind = "extra"\n\nprice = "45 USD"\n');

let workbench: Workbench;
let grid: Grid;

beforeAll(async () => {
  workbench = await launch({
    files: { 'now.paneljob': now, 'old.paneljob': job },
    size: { width: 1500, height: 900 },
  });
  grid = gridIn(workbench.page, await workbench.openGrid('now.paneljob'));
  await grid.chooseSheet('part');
});

afterAll(async () => {
  await workbench.close();
});

const pane = (): ReturnType<Grid['frame']['locator']> =>
  grid.frame.locator('[data-panel="compare"]');

test('where there is no git, a sentence says so and what works all the same', async () => {
  const told = workbench.page.locator('.notifications-toasts', { hasText: 'Compare with File' });
  // A grid that is just opening takes the focus, and with it the palette's last key.
  await until('the sentence', async () => {
    await workbench.command('Panelwright: Compare with HEAD');
    await told.waitFor({ timeout: 5000 }).catch(() => undefined);
    return told.isVisible();
  });
});

test('with another file, changes are marked in the grid and listed with what they did', async () => {
  await workbench.command('Panelwright: Compare with File…');
  const input = workbench.page.locator('.quick-input-widget input.input').first();
  await input.waitFor({ state: 'visible' });
  await until('the folder', async () => (await input.inputValue()).endsWith('/'));
  // The dialog lists the folder in its own time, and takes a file that is clicked.
  await until('the dialog to close', async () => {
    const row = workbench.page
      .locator('.quick-input-widget .monaco-list-row', { hasText: 'old.paneljob' })
      .first();
    if (!(await input.isVisible())) return true;
    if ((await row.count()) > 0) await row.click({ timeout: 2000 }).catch(() => undefined);
    await new Promise((resolve) => setTimeout(resolve, 500));
    return !(await input.isVisible());
  });
  await pane().locator('.compare-change').first().waitFor();
  const lines = await pane().locator('.compare-change').allInnerTexts();
  expect(lines.some((line) => /Midbass ring: lean[\s\S]*15 deg → 18 deg/.test(line))).toBe(true);
  expect(lines.some((line) => /Badge[\s\S]*new row/.test(line))).toBe(true);
  await grid.goTo('mid_ring', 'tilt');
  const cell = grid.frame.locator('[data-cell="mid_ring/tilt"]').first();
  expect(await cell.getAttribute('data-mark')).toBe('changed');
  expect(await cell.getAttribute('aria-description')).toBe('was 15 deg');
  await workbench.screenshot('compare-dark');
});

test('a click on a change goes to its cell, and the next one follows', async () => {
  await pane().locator('[data-action="go-change"]', { hasText: 'lean' }).first().click();
  const active = (): Promise<string | null> =>
    grid.frame.locator('.cell.active').first().getAttribute('data-cell');
  await until('the cell', async () => (await active()) === 'mid_ring/tilt');
  await workbench.command('Panelwright: Next Change');
  await until('the next', async () => (await active()) !== 'mid_ring/tilt');
});

test('what is put back is no change any more', async () => {
  await grid.typeCell('mid_ring', 'tilt', '15 deg');
  await until('the list', async () => {
    const lines = await pane().locator('.compare-change').allInnerTexts();
    return lines.every((line) => !line.includes('lean'));
  });
  const cell = grid.frame.locator('[data-cell="mid_ring/tilt"]').first();
  expect(await cell.getAttribute('data-mark')).toBeNull();
});

test('comparing stops', async () => {
  await workbench.command('Panelwright: Stop Comparing');
  await until('the marks', async () => (await grid.frame.locator('[data-mark]').count()) === 0);
  expect(workbench.violations).toEqual([]);
});
