import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findings, useTheme } from './harness/accessibility.ts';
import type { Locator } from './harness/browser.ts';
import { gridIn, type Grid } from './harness/grid.ts';
import {
  launch,
  repository,
  themes,
  until,
  type Theme,
  type Workbench,
} from './harness/workbench.ts';

const file = 'panes.paneljob';

/** Two alternatives: another lean, and another price of the midbass. */
const options = `
[[option]]
id = "dear"

name = "Better midbass"

set.mid.price = "249 USD"

order = 1000

[[option]]
id = "steep"

name = "Leans further"

set.mid_ring.tilt = "22 deg"

order = 2000
`;

let workbench: Workbench;
let grid: Grid;

function pane(key: string): Locator {
  return grid.frame.locator(`[data-panel="${key}"]`);
}

/** Brings a pane to the front and waits until its figures have come. */
async function show(key: string): Promise<void> {
  // Not by the mouse: the strip of tabs may be scrolled.
  await grid.frame.locator(`[data-pane="${key}"]`).evaluate((tab) => {
    tab.click();
  });
  await pane(key).waitFor();
  await until(`the figures of ${key}`, async () => {
    if ((await grid.frame.locator(`[data-panel="${key}"] > .stale`).count()) > 0) return false;
    const words = await pane(key).innerText();
    return /\d/.test(words) && words;
  });
}

/** What a part of the page says once it says something else than it did. */
async function moved(part: Locator, before: string): Promise<string> {
  return grid.changed('a figure', () => part.innerText(), before);
}

beforeAll(async () => {
  const pair = await readFile(join(repository, 'sample-jobs/front-door-pair.paneljob'), 'utf8');
  workbench = await launch({ files: { [file]: pair + options } });
  grid = gridIn(workbench.page, await workbench.openGrid(file));
});

afterAll(async () => {
  await workbench.close();
});

describe('the panes beside a job', () => {
  test('the price moves with the contingency, and so does what moves it most', async () => {
    await grid.chooseSheet('charge');
    await show('price');
    const total = pane('price').locator('.price-total .number');
    const before = await total.innerText();
    const ask = pane('price').locator('.cost-drivers vscode-button, .cost-drivers button').first();
    await ask.click();
    const first = pane('price').locator('.cost-drivers li').first();
    await first.waitFor({ state: 'attached' });
    const strongest = (await first.textContent()) ?? '';
    expect(strongest).toMatch(/10 % less is −\d/);
    await grid.typeCell('contingency', 'percent', '12 %');
    expect(await moved(total, before)).toMatch(/ USD$/);
    const state = pane('price').locator('.cost-drivers [role="status"]');
    await until('the earlier bars to be marked', async () =>
      (await state.innerText()).includes('changed since'),
    );
    await ask.click();
    const now = await grid.changed(
      'the bars',
      async () => (await first.textContent()) ?? '',
      strongest,
    );
    expect(now).toMatch(/10 % less is −\d/);
  });

  test('options are held against the job as it is now, and one is taken into it', async () => {
    await workbench.command('Panelwright: Compare Options');
    await show('options');
    const dear = pane('options').locator('.option-figures tbody tr').first().locator('td').nth(1);
    await dear.waitFor();
    const before = await dear.innerText();
    expect(before).toMatch(/\+\d/);
    await grid.typeCell('contingency', 'percent', '7 %');
    expect(await moved(dear, before)).toMatch(/\+\d/);
    const price = await grid.figure('price');
    await pane('options').locator('[data-option="dear"] [data-action="accept-option"]').click();
    await grid.changed('the price', () => grid.figure('price'), price);
    await until(
      'one option to be left',
      async () => (await pane('options').locator('.option').count()) === 1,
    );
    await grid.chooseSheet('driver');
    expect(await grid.cell('mid', 'price')).toBe('249.00 USD');
  });

  test('the mix plan weighs another percentage of catalyst', async () => {
    await grid.chooseSheet('part');
    await workbench.command('Panelwright: Show Mix Plan');
    await show('mix');
    const amounts = pane('mix').locator('.mix-amounts').first();
    const before = await amounts.innerText();
    expect(before).toMatch(/2 % of/);
    await grid.typeCell('door_soak', 'percent', '1.5 %');
    expect(await moved(amounts, before)).toMatch(/1\.5 % of/);
  });

  test('the schedule ends later where it cures longer', async () => {
    await grid.chooseSheet('task');
    await workbench.command('Panelwright: Show Schedule');
    await show('schedule');
    const facts = pane('schedule').locator('.price-facts');
    const before = await facts.innerText();
    expect(before).toMatch(/Finished\s+\w{3} 2026-\d\d-\d\d/);
    await grid.typeCell('door_curing', 'minutes', '100 h');
    expect(await moved(facts, before)).toMatch(/Finished\s+\w{3} 2026-\d\d-\d\d/);
  });

  test('what a task took is typed beside its estimate and stands in the file', async () => {
    await workbench.command('Panelwright: Show Estimate against Actual');
    await show('actuals');
    const line = pane('actuals').locator('[data-actual="door_curing"]');
    expect(await line.textContent()).toContain('100 h');
    await line.locator('textarea').click();
    await workbench.page.keyboard.type('90 h');
    await workbench.page.keyboard.press('Enter');
    const difference = line.locator('.actual-difference');
    await until('the difference', async () => (await difference.innerText()).includes('−10 %'));
    await workbench.page.keyboard.press('Control+s');
    await until('the file', async () => (await workbench.bytes(file)).includes('actual = "90 h"'));
  });

  test.each(Object.keys(themes) as Theme[])(
    'the accessibility checker finds nothing in any of them in the %s theme',
    async (theme) => {
      await useTheme(workbench, grid.frame, theme);
      // What does not hang on colours is the same in every theme.
      const colours = theme !== 'dark';
      const found: string[] = [];
      for (const key of ['price', 'options', 'checks', 'mix', 'schedule', 'actuals']) {
        await show(key);
        const told = await findings(grid.frame, { within: `[data-panel="${key}"]`, colours });
        found.push(...told.map((line) => `${key}: ${line}`));
      }
      expect(found).toEqual([]);
    },
  );

  test('the content security policy refused nothing', () => {
    expect(workbench.violations).toEqual([]);
  });
});
