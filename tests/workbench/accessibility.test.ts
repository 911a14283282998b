import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findings, useTheme } from './harness/accessibility.ts';
import { gridIn } from './harness/grid.ts';
import { launch, themes, type Theme, type Workbench } from './harness/workbench.ts';

const sample = 'front-door-pair.paneljob';

let workbench: Workbench;

beforeAll(async () => {
  workbench = await launch();
  await workbench.openGrid(sample);
  // The controls' own library comes after the first paint.
  await workbench.page.waitForTimeout(1500);
});

afterAll(async () => {
  await workbench.close();
});

describe.each(Object.keys(themes) as Theme[])('in the %s theme', (theme) => {
  test('the accessibility checker finds nothing on any sheet', async () => {
    const frame = await workbench.gridFrame();
    await useTheme(workbench, frame, theme);
    const grid = gridIn(workbench.page, frame);
    const found: string[] = [];
    for (const sheet of ['panel', 'driver', 'measure', 'part']) {
      await grid.chooseSheet(sheet);
      found.push(...(await findings(frame)).map((line) => `${sheet}: ${line}`));
    }
    expect(found).toEqual([]);
  });
});

test('the content security policy refused nothing', () => {
  expect(workbench.violations).toEqual([]);
});
