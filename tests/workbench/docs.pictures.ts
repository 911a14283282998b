import { join } from 'node:path';
import { test } from 'vitest';
import { gridIn } from './harness/grid.ts';
import { launch, repository, themes, type Theme } from './harness/workbench.ts';

const images = join(repository, 'docs/images');
const sample = 'front-door-pair.paneljob';

/** The pictures of README and docs: the sample job as it opens, its cursor on a tilted ring. */
test.each(Object.keys(themes) as Theme[])('the grid in the %s theme', async (theme) => {
  const workbench = await launch({ theme });
  const grid = gridIn(workbench.page, await workbench.openGrid(sample));
  await grid.chooseSheet('part');
  await grid.goTo('mid_ring', 'name');
  // The row card is asked for when the cursor rests, and the controls are dressed after that.
  await grid.frame.locator('[data-card="mid_ring"]').waitFor();
  await grid.frame.locator('vscode-button').first().waitFor();
  await workbench.page.waitForTimeout(1000);
  await workbench.page.screenshot({ path: join(images, `grid-${theme}.png`) });
  await workbench.close();
});
