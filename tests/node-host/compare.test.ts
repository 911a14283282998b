import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { gridIn, type Grid } from '../workbench/harness/grid.ts';
import { repository as checkout, until } from '../workbench/harness/workbench.ts';
import { commitAs, openRepository, shopRepository, type GitWorkbench } from './harness.ts';

const file = 'door.paneljob';
const quoted = readFileSync(join(checkout, 'sample-jobs/front-door-pair.paneljob'), 'utf8');
const leant = quoted.replace('tilt = "15 deg"', 'tilt = "18 deg"');
const wide = quoted.replace('roundrect(26 in', 'roundrect(27 in');

let workbench: GitWorkbench;
let grid: Grid;

beforeAll(async () => {
  const repository = shopRepository();
  repository.write(file, quoted);
  commitAs(repository, 'Demo Estimator', 'Quote the door pair');
  repository.git('checkout', '-q', '-b', 'wide');
  repository.write(file, wide);
  commitAs(repository, 'Demo Estimator', 'Widen the base');
  repository.git('checkout', '-q', 'main');
  repository.write(file, leant);
  commitAs(repository, 'Demo Upholsterer', 'Lean the midbass further');
  workbench = await openRepository(repository, { size: { width: 1500, height: 900 } });
  grid = gridIn(workbench.page, await workbench.openGrid(file));
  await grid.chooseSheet('part');
});

afterAll(async () => {
  await workbench.close();
});

const pane = (): ReturnType<Grid['frame']['locator']> =>
  grid.frame.locator('[data-panel="compare"]');

/** The changes that are listed, once the job is held against this version. */
async function changes(against: string): Promise<string> {
  await pane().locator('.compare-title', { hasText: against }).first().waitFor();
  return (await pane().locator('.compare-change').allInnerTexts()).join('\n');
}

test('with HEAD: what was typed since is marked, with what was there before', async () => {
  await grid.typeCell('mid_ring', 'tilt', '20');
  await workbench.command('Panelwright: Compare with HEAD');
  expect(await changes('Compared with HEAD: 1 change')).toMatch(
    /Midbass ring: lean[\s\S]*18 deg → 20 deg/,
  );
  const cell = grid.frame.locator('[data-cell="mid_ring/tilt"]').first();
  expect(await cell.getAttribute('data-mark')).toBe('changed');
  expect(await cell.getAttribute('aria-description')).toBe('was 18 deg');
  await workbench.screenshot('node-compare-dark');
});

test('with a revision: commits of this job are offered, newest first', async () => {
  const offered = await workbench.listed(
    'Panelwright: Compare with Revision…',
    'Quote the door pair',
  );
  expect(offered.map((line) => line.includes('Demo Upholsterer'))).toEqual([true, false]);
  await workbench.choose('Quote the door pair');
  expect(await changes('Quote the door pair: 1 change')).toContain('15 deg → 20 deg');
});

test('with a branch: what only the branch changed is listed too', async () => {
  await workbench.listed('Panelwright: Compare with Branch…', 'wide');
  await workbench.choose('wide');
  const told = await changes('Compared with wide: 2 changes');
  expect(told).toContain('15 deg → 20 deg');
  expect(told).toMatch(/27 in[\s\S]*→[\s\S]*26 in/);
});

test('the history of a cell: who changed it when, its values and the price each time', async () => {
  await grid.goTo('mid_ring', 'tilt');
  const lines = await workbench.listed('Panelwright: Show Cell History', 'Demo Estimator');
  const [now = '', later = '', first = ''] = lines;
  expect(now).toMatch(/20 deg[\s\S]*\d USD[\s\S]*Not committed yet/);
  expect(later).toMatch(
    /18 deg[\s\S]*\d USD[\s\S]*Demo Upholsterer [0-9a-f]{10}: Lean the midbass/,
  );
  expect(first).toMatch(/15 deg[\s\S]*\d USD[\s\S]*Demo Estimator [0-9a-f]{10}: Quote the door/);
  const price = (text: string): string => /[\d,.]+ USD/.exec(text)?.[0] ?? '';
  expect(new Set([now, later, first].map(price)).size).toBe(3);
  await workbench.screenshot('node-history-dark');
  await workbench.choose('15 deg');
  expect(await changes('1 change')).toContain('15 deg → 20 deg');
});

test('a change order from the commit that was quoted is shown beside the grid', async () => {
  await workbench.listed('Panelwright: Preview Change Order…', 'Revision…');
  await workbench.choose('Revision…');
  await workbench.choose('Quote the door pair');
  await workbench.choose('Client’s copy');
  const paper = await workbench.gridFrame('.kind:has-text("Change order")');
  const told = await paper.locator('body').innerText();
  expect(told).toContain('Quote the door pair');
  await workbench.screenshot('node-change-order-dark');
  await workbench.command('View: Close Editor');
});

test('the page kept to its content security policy', async () => {
  await workbench.command('Panelwright: Stop Comparing');
  await until('the marks', async () => (await grid.frame.locator('[data-mark]').count()) === 0);
  expect(workbench.violations).toEqual([]);
});
