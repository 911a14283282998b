import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Frame } from '../workbench/harness/browser.ts';
import { repository as checkout, until } from '../workbench/harness/workbench.ts';
import { commitAs, openRepository, shopRepository, type GitWorkbench } from './harness.ts';

const file = 'door.paneljob';
const quoted = readFileSync(join(checkout, 'sample-jobs/front-door-pair.paneljob'), 'utf8');
/** Both lean the ring; one widens the base too. */
const ours = quoted.replace('tilt = "15 deg"', 'tilt = "18 deg"');
const theirs = quoted
  .replace('tilt = "15 deg"', 'tilt = "12 deg"')
  .replace('roundrect(26 in', 'roundrect(27 in');

let workbench: GitWorkbench;

beforeAll(async () => {
  const repository = shopRepository();
  repository.write(file, quoted);
  commitAs(repository, 'Demo Estimator', 'Quote the door pair');
  repository.git('checkout', '-q', '-b', 'wide');
  repository.write(file, theirs);
  commitAs(repository, 'Demo Estimator', 'Widen the base');
  repository.git('checkout', '-q', 'main');
  repository.write(file, ours);
  commitAs(repository, 'Demo Upholsterer', 'Lean the midbass further');
  workbench = await openRepository(repository, { size: { width: 1500, height: 900 } });
});

afterAll(async () => {
  await workbench.close();
});

/** The page that settles conflicts, with what each side of the first one comes to. */
async function resolvePage(): Promise<Frame> {
  const frame = await workbench.gridFrame('.resolve-page .conflict');
  await frame.locator('.conflict-totals li').last().waitFor();
  return frame;
}

const texts = ['15 deg', '18 deg', '12 deg'];

test('without the driver too, git tells the page what stood before both sides', async () => {
  await workbench.openGrid(file);
  expect(workbench.repository.git('merge', 'wide').status).not.toBe(0);
  expect(await workbench.bytes(file)).not.toContain('|||||||');
  const page = await resolvePage();
  expect(await page.locator('.conflict dd').allInnerTexts()).toEqual(texts);
  workbench.git('merge', '--abort');
  await workbench.gridFrame();
});

test('merging is set up once it is agreed to, and not before', async () => {
  await workbench.command('Panelwright: Set Up Merging for This Repository');
  const dialog = workbench.page.locator('.monaco-dialog-box').first();
  await dialog.waitFor();
  expect(await dialog.innerText()).toContain('two lines in .gitattributes');
  await workbench.screenshot('node-set-up-dark');
  expect(existsSync(join(workbench.folder, '.gitattributes'))).toBe(false);
  await dialog.locator('.monaco-button', { hasText: 'Set Up' }).click();
  await until('the attributes', () =>
    Promise.resolve(existsSync(join(workbench.folder, '.gitattributes'))),
  );
  await workbench.page
    .locator('.notifications-toasts', { hasText: 'git merges jobs cell by cell' })
    .waitFor();
  expect(await workbench.bytes('.gitattributes')).toBe(
    '*.paneljob merge=panelwright\n*.panelbook merge=panelwright\n',
  );
  expect(workbench.git('config', 'merge.panelwright.driver')).toContain('merge-driver.cjs');
  workbench.git('add', '.gitattributes');
  workbench.git('commit', '-q', '-m', 'Merge jobs cell by cell');
});

test('a branch is merged by the driver: one cell is in conflict, the wider base is in', async () => {
  const { status } = workbench.repository.git('merge', 'wide');
  expect(status).not.toBe(0);
  const merged = await workbench.bytes(file);
  expect(merged.match(/^<<<<<<< /gm)).toHaveLength(1);
  expect(merged).toContain('roundrect(27 in');
});

test('the open grid gives way to the page, with all three texts and both totals', async () => {
  const page = await resolvePage();
  expect(await page.locator('.conflict dd').allInnerTexts()).toEqual(texts);
  const [first = '', second = ''] = await page.locator('.conflict-totals li').allInnerTexts();
  expect(first).toMatch(/^Ours: price [\d,.]+ USD/);
  expect(second).toMatch(/^Theirs: price [\d,.]+ USD/);
  await workbench.screenshot('node-resolve-dark');
});

test('a choice settles it; saved and staged, git sees no conflict any more', async () => {
  const page = await resolvePage();
  await page.locator('.conflict [data-action="settle"]', { hasText: 'Take theirs' }).click();
  await workbench.gridFrame();
  await workbench.page.keyboard.press('Control+s');
  await until('the file', async () => (await workbench.bytes(file)) === theirs);
  workbench.git('add', file);
  expect(workbench.git('ls-files', '--unmerged')).toBe('');
  workbench.git('commit', '-q', '--no-edit');
  expect(workbench.git('log', '-1', '--format=%p').trim().split(' ')).toHaveLength(2);
  expect(workbench.violations).toEqual([]);
});
