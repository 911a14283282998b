import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { axeFile } from './harness/browser.ts';
import { gridIn } from './harness/grid.ts';
import { launch, themes, until, type Theme, type Workbench } from './harness/workbench.ts';

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

interface Violation {
  readonly id: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary?: string }[];
}

/** What the accessibility checker finds in the grid's page, one line each. */
async function findings(): Promise<readonly string[]> {
  const frame = await workbench.gridFrame();
  await frame.evaluate(await readFile(axeFile(), 'utf8'));
  // Its preloading would ask for the style sheet again, which the page's policy rightly refuses.
  const found = await frame.evaluate<readonly Violation[]>(
    'axe.run(document, { preload: false }).then((result) => result.violations)',
  );
  return found.flatMap(({ id, nodes }) =>
    nodes.map(({ html, failureSummary = '' }) => `${id}: ${html.slice(0, 160)} ${failureSummary}`),
  );
}

async function useTheme(theme: Theme): Promise<void> {
  const settings = join(workbench.folder, '.vscode/settings.json');
  const now = JSON.parse(await readFile(settings, 'utf8')) as Record<string, unknown>;
  await writeFile(settings, JSON.stringify({ ...now, 'workbench.colorTheme': themes[theme].name }));
  const frame = await workbench.gridFrame();
  await until(
    `the ${theme} theme`,
    async () =>
      (await frame.locator('body').getAttribute('data-vscode-theme-kind')) === themes[theme].kind,
  );
}

describe.each(Object.keys(themes) as Theme[])('in the %s theme', (theme) => {
  test('the accessibility checker finds nothing on any sheet', async () => {
    await useTheme(theme);
    const grid = gridIn(workbench.page, await workbench.gridFrame());
    const found: string[] = [];
    for (const sheet of ['panel', 'driver', 'measure', 'part']) {
      await grid.chooseSheet(sheet);
      found.push(...(await findings()).map((line) => `${sheet}: ${line}`));
    }
    expect(found).toEqual([]);
  });
});

test('the content security policy refused nothing', () => {
  expect(workbench.violations).toEqual([]);
});
