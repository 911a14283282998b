import { join } from 'node:path';
import { test } from 'vitest';
import { writeEmptyJob } from '../../extension/engine/job/empty-job.ts';
import type { Frame } from './harness/browser.ts';
import { gridIn } from './harness/grid.ts';
import { launch, repository, until, type Workbench } from './harness/workbench.ts';

const sample = 'front-door-pair.paneljob';

/** Waits until the controls are dressed and what knobs do has come, then takes the picture. */
async function take(workbench: Workbench, frame: Frame, name: string): Promise<void> {
  await frame.locator('vscode-button').first().waitFor();
  await workbench.page.waitForTimeout(1500);
  await workbench.page.screenshot({ path: join(repository, `docs/images/${name}.png`) });
  await workbench.close();
}

/** Leaves the window to the editor. */
async function hideSideBar(workbench: Workbench): Promise<void> {
  await workbench.command('View: Toggle Primary Side Bar Visibility');
  await workbench.page.locator('.explorer-folders-view').waitFor({ state: 'hidden' });
}

test.each(['dark', 'light', 'high-contrast', 'high-contrast-light'] as const)(
  'a ring in the %s theme',
  async (theme) => {
    const workbench = await launch({ theme });
    const grid = gridIn(workbench.page, await workbench.openGrid(sample));
    await hideSideBar(workbench);
    await grid.chooseSheet('part');
    await grid.goTo('mid_ring', 'name');
    await grid.frame.locator('[data-card="mid_ring"]').waitFor();
    await take(workbench, grid.frame, `grid-${theme}`);
  },
);

test('a narrow window', async () => {
  const workbench = await launch({
    size: { width: 1000, height: 800 },
    settings: { 'workbench.activityBar.location': 'hidden' },
  });
  await workbench.openGrid(sample);
  await hideSideBar(workbench);
  await workbench.page.setViewportSize({ width: 520, height: 800 });
  const grid = gridIn(workbench.page, await workbench.gridFrame());
  await grid.chooseSheet('part');
  await grid.goTo('mid_ring', 'name');
  await take(workbench, grid.frame, 'narrow');
});

test('a cell with a problem, and its sentence', async () => {
  const workbench = await launch({ size: { width: 1280, height: 760 } });
  const grid = gridIn(workbench.page, await workbench.openGrid(sample));
  await hideSideBar(workbench);
  await grid.chooseSheet('part');
  await grid.goTo('mid_ring', 'name');
  await until('the row card', async () => (await grid.field('depth')) !== '');
  await grid.typeField('depth', '1 in');
  await until('the problem', async () => (await grid.figure('problems')) !== 'nothing');
  await grid.frame.locator('[data-pane="problems"]').click();
  await grid.goTo('mid_ring', 'name');
  await take(workbench, grid.frame, 'problems');
});

test('an empty job offers its kits', async () => {
  const start = { title: 'New job', units: 'in', currency: 'USD', date: '2026-11-25' } as const;
  const workbench = await launch({ files: { 'new-job.paneljob': writeEmptyJob(start) } });
  await workbench.clickFile('new-job.paneljob');
  const frame = await workbench.gridFrame('.kits');
  await take(workbench, frame, 'kits');
});

test('the text beside the grid', async () => {
  const workbench = await launch({
    size: { width: 1440, height: 760 },
    settings: { 'editor.minimap.enabled': false },
  });
  await workbench.openGrid(sample);
  await hideSideBar(workbench);
  await workbench.command('Panelwright: Open as Text');
  await workbench.page.locator('.monaco-editor .view-line').first().waitFor();
  const grid = gridIn(workbench.page, await workbench.gridFrame());
  await grid.chooseSheet('part');
  await grid.goTo('mid_ring', 'name');
  await take(workbench, grid.frame, 'text-beside-grid');
});
