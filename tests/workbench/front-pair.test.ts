import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeEmptyJob } from '../../extension/engine/job/empty-job.ts';
import { entryCount, frontPairEntries } from '../samples/front-pair-entries.ts';
import { gridIn, type Grid } from './harness/grid.ts';
import { launch, until, type Workbench } from './harness/workbench.ts';

const file = 'new.paneljob';
const start = writeEmptyJob({
  title: 'New job',
  units: 'in',
  currency: 'USD',
  date: '2026-11-24',
});

let workbench: Workbench;
let grid: Grid;
let entries = 0;

beforeAll(async () => {
  workbench = await launch({ files: { [file]: start } });
  await workbench.clickFile(file);
  // An empty job offers its kits first.
  const blank = '[data-action="start-blank"]';
  grid = gridIn(workbench.page, await workbench.gridFrame(blank));
  await grid.frame.locator(blank).first().click();
});

afterAll(async () => {
  await workbench.close();
});

async function typeHead(key: string, text: string): Promise<void> {
  await grid.typeCell(key, 'value', text);
  entries += 1;
  await until(`${key} in the grid`, async () => (await grid.cell(key, 'value')) !== '');
}

/** Answers one question of a kit, whatever its control is. */
async function answer(key: string, text: string): Promise<void> {
  const { frame } = grid;
  const { keyboard } = workbench.page;
  const field = frame.locator(`[data-dialog="kit"] [data-question="${key}"] [data-type]`);
  if ((await field.getAttribute('data-type')) === 'choice') {
    await field.click();
    await field.locator(`[value="${text}"]`).click();
  } else {
    await field.click();
    await keyboard.press('Control+a');
    await keyboard.type(text);
  }
  entries += 1;
}

async function insertKit(kit: string, answers: Readonly<Record<string, string>>): Promise<void> {
  const { frame } = grid;
  const before = await frame.evaluate(rowsOfSheets);
  await frame.locator('[data-action="insert-kit"]').first().click();
  await frame.locator(`[data-dialog="pick"] [data-value="${kit}"]`).click();
  entries += 1;
  await frame.locator('[data-dialog="kit"]').waitFor();
  for (const [key, text] of Object.entries(answers)) await answer(key, text);
  await frame.locator('[data-dialog="kit"] [data-action="dialog-agree"]:not([disabled])').click();
  await frame.locator('[data-dialog="kit"]').waitFor({ state: 'detached' });
  // The rows come with the host's answer, which also puts the cursor on the first of them.
  await until(`the rows of ${kit}`, async () => (await frame.evaluate(rowsOfSheets)) > before);
}

/** Runs in the page: how many rows the sheet tabs say that there are. */
function rowsOfSheets(): number {
  return [...document.querySelectorAll('[data-sheet] .tab-count')].reduce(
    (sum, { textContent }) => sum + Number(textContent),
    0,
  );
}

test('the front-door pair is made from an empty file by 40 entries or fewer', async () => {
  await grid.chooseSheet('job');
  for (const step of frontPairEntries) {
    if (step.do === 'head') await typeHead(step.key, step.text);
    else if (step.do === 'kit') await insertKit(step.kit, step.answers);
    else {
      await grid.chooseSheet(step.table);
      await grid.typeCell(step.row, step.column, step.text);
      entries += 1;
    }
  }
  await workbench.page.keyboard.press('Control+s');
  await workbench.page.locator('.tab.dirty').waitFor({ state: 'detached' });
  expect(await workbench.bytes(file)).toBe(await workbench.bytes('front-door-pair.paneljob'));
  expect(entries).toBe(entryCount(frontPairEntries));
  expect(entries).toBeLessThanOrEqual(40);
});

test('the content security policy refused nothing', () => {
  expect(workbench.violations).toEqual([]);
});
