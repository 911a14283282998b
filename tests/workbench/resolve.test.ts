import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Frame } from './harness/browser.ts';
import { gridIn } from './harness/grid.ts';
import { launch, repository, until, type Workbench } from './harness/workbench.ts';

const file = 'door.paneljob';
const tilt = 'tilt = "15 deg"\n';
const base = 'shape = "roundrect(26 in, 15 in, 2 in)"\n';
// What nobody changed has spaces and remarks of its own.
const before = readFileSync(join(repository, 'sample-jobs/front-door-pair.paneljob'), 'utf8')
  .replace('client = "Demo client"', 'client   =  "Demo client"  # as on the card')
  .concat('\n# kept to the letter\n\n');

/** The lines as git leaves them where both sides changed them. */
function conflict(line: string, ours: string, theirs: string): string {
  if (!before.includes(line)) throw new Error(`The sample has no line ${line}`);
  return `<<<<<<< HEAD\n${ours}||||||| base\n${line}=======\n${theirs}>>>>>>> shop\n`;
}

const text = before
  .replace(tilt, conflict(tilt, 'tilt = "18 deg"\n', 'tilt = "12 deg"\n'))
  .replace(base, conflict(base, base.replace('26', '27'), base.replace('26', '25')));

/** The file as it must be in the end: theirs in the ring, ours in the base. */
const settled = before.replace(tilt, 'tilt = "12 deg"\n').replace(base, base.replace('26', '27'));

let workbench: Workbench;

beforeAll(async () => {
  workbench = await launch({ files: { [file]: text }, size: { width: 1500, height: 900 } });
  await workbench.clickFile(file);
});

afterAll(async () => {
  await workbench.close();
});

/** The page, once it lists so many conflicts with what each side comes to. */
async function page(count: number): Promise<Frame> {
  const frame = await workbench.gridFrame('.resolve-page .conflict');
  await until(`${String(count)} conflicts`, async () => {
    const totals = await frame.locator('.conflict-totals li').count();
    return (await frame.locator('.conflict').count()) === count && totals === count * 2;
  });
  return frame;
}

/** The file on disk, once it holds so many conflicts; while it is written it is empty. */
async function saved(count: number): Promise<string> {
  return until(`a file with ${String(count)} conflicts`, async () => {
    const content = await workbench.bytes(file);
    const open = content.match(/^<<<<<<< /gm)?.length ?? 0;
    return content !== '' && open === count && content;
  });
}

async function take(choice: string, title: string, count: number): Promise<void> {
  const frame = await page(count);
  await frame
    .locator(`.conflict[aria-label="${title}"] [data-action="settle"]`, { hasText: choice })
    .click();
}

test('each cell in conflict is shown with what stood before, both sides and what each comes to', async () => {
  const frame = await page(2);
  expect(await frame.locator('.conflict h3').allInnerTexts()).toEqual([
    'Front door base (door_base): shape',
    'Midbass ring (mid_ring): lean',
  ]);
  expect(await frame.locator('.conflict').last().locator('dd').allInnerTexts()).toEqual([
    '15 deg',
    '18 deg',
    '12 deg',
  ]);
  const totals = await frame.locator('.conflict-totals li').allInnerTexts();
  const prices = totals.map(
    (line) => /price ([\d,.]+ USD), materials in it [\d,.]+ USD/.exec(line)?.[1],
  );
  // Ours in both is the same job in either list; each theirs is a job of its own.
  expect(new Set(prices).size).toBe(3);
  expect(prices).not.toContain(undefined);
  await workbench.screenshot('resolve-dark');
});

test('a choice is one step: Undo takes it back', async () => {
  await take('Take theirs', 'Midbass ring (mid_ring): lean', 2);
  await page(1);
  await workbench.page.keyboard.press('Control+z');
  await page(2);
});

test('what is left open is saved and gone on with', async () => {
  await take('Take theirs', 'Midbass ring (mid_ring): lean', 2);
  const frame = await page(1);
  expect(await frame.locator('.conflict h3').allInnerTexts()).toEqual([
    'Front door base (door_base): shape',
  ]);
  await workbench.page.keyboard.press('Control+s');
  expect(await saved(1)).toContain('tilt = "12 deg"\n');
  await workbench.command('View: Close Editor');
  await workbench.clickFile(file);
  await take('Take ours', 'Front door base (door_base): shape', 1);
});

test('with the last choice the grid is back, and nothing outside the conflicts has moved', async () => {
  const grid = gridIn(workbench.page, await workbench.gridFrame());
  await grid.chooseSheet('part');
  expect(await grid.cell('mid_ring', 'tilt')).toBe('12 deg');
  await workbench.page.keyboard.press('Control+s');
  expect(await saved(0)).toBe(settled);
  expect(workbench.violations).toEqual([]);
});

test('where there is no git, setting up merging says what is missing and what does the same', async () => {
  await workbench.command('Panelwright: Set Up Merging for This Repository');
  await workbench.page
    .locator('.notifications-toasts', { hasText: 'panelwright merge --set-up' })
    .waitFor();
});
