import { test } from 'vitest';
import { launch, type Theme } from './harness/workbench.ts';
import { gridIn } from './harness/grid.ts';

const theme = (process.env['LOOK_THEME'] ?? 'dark') as Theme;
const width = Number(process.env['LOOK_WIDTH'] ?? '1440');
const file = process.env['LOOK_FILE'] ?? 'front-door-pair.paneljob';

test('look', async () => {
  const workbench = await launch({ theme, size: { width, height: 900 } });
  const grid = gridIn(workbench.page, await workbench.openGrid(file));
  await new Promise((r) => setTimeout(r, 2500));
  await workbench.page.screenshot({ path: `/tmp/shots/${theme}-${String(width)}-1.png` });
  await grid.goTo(process.env['LOOK_ROW'] ?? 'mid_ring', 'name');
  await new Promise((r) => setTimeout(r, 800));
  await workbench.page.screenshot({ path: `/tmp/shots/${theme}-${String(width)}-2.png` });
  console.log(workbench.violations);
  await workbench.close();
});
