import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findings } from './harness/accessibility.ts';
import type { Locator } from './harness/browser.ts';
import { gridIn, type Grid } from './harness/grid.ts';
import { launch, until, type Workbench } from './harness/workbench.ts';

const file = 'two-ring-door.paneljob';
const ring = 'mid_ring';

let workbench: Workbench;
let grid: Grid;

function mark(row: string): Locator {
  return grid.frame.locator(`.picture [data-row="part/${row}"]`).first();
}

async function choose(list: string, value: string): Promise<void> {
  await grid.frame.evaluate(
    ([name, chosen]) => {
      const found = document.querySelector<HTMLSelectElement>(`[data-choice="${name}"]`);
      if (found === null) return;
      found.value = chosen;
      found.dispatchEvent(new Event('change', { bubbles: true }));
    },
    [list, value] as const,
  );
  await grid.frame.locator('[data-panel="panel"] .panel-pane:not(.stale)').waitFor();
}

/** Where the ring's cells place it. */
async function place(): Promise<readonly [string, string]> {
  return [await grid.cell(ring, 'at_x'), await grid.cell(ring, 'at_y')];
}

/** Runs in the page: where the preview of a traced outline stands, and whether one sees through it. */
function preview(): { readonly below: boolean; readonly within: boolean; readonly fill: string } {
  const picture = document.querySelector('.trace-picture');
  const name = document.querySelector('dialog input.input');
  const dialog = document.querySelector('dialog');
  const area = picture?.querySelector('.area');
  const [box, above, around] = [picture, name, dialog].map((one) => one?.getBoundingClientRect());
  if (!box || !above || !around || !area) return { below: false, within: false, fill: '' };
  const within =
    box.left >= around.left && box.right <= around.right && box.bottom <= around.bottom;
  return { below: box.top >= above.bottom, within, fill: getComputedStyle(area).fill };
}

beforeAll(async () => {
  workbench = await launch();
  grid = gridIn(workbench.page, await workbench.openGrid(file));
  await grid.chooseSheet('part');
});

afterAll(async () => {
  await workbench.close();
});

describe('the panel pane', () => {
  test('the command Show Panel brings the plan of the job’s first base', async () => {
    await workbench.command('Panelwright: Show Panel');
    await mark(ring).waitFor();
    expect(await grid.frame.locator('[data-pane="panel"]').getAttribute('aria-selected')).toBe(
      'true',
    );
  });

  test('a ring pressed in the picture is the row under the cursor', async () => {
    await mark(ring).focus();
    await workbench.page.keyboard.press('Enter');
    await until('the ring’s row', async () => {
      const active = await grid.frame.locator('.cell.active').getAttribute('data-cell');
      return active?.startsWith(`${ring}/`);
    });
    expect(await mark(ring).getAttribute('aria-pressed')).toBe('true');
  });

  test('a ring moved with the keys is another at_x and at_y, and one undo step', async () => {
    const before = await place();
    await mark(ring).focus();
    for (const key of ['ArrowLeft', 'ArrowLeft', 'ArrowUp'])
      await workbench.page.keyboard.press(key);
    await until('another place', async () => (await place()).join() !== before.join());
    const after = await place();
    expect(after[0]).not.toBe(before[0]);
    expect(after[1]).not.toBe(before[1]);
    await grid.goTo(ring, 'name');
    await workbench.page.keyboard.press('Control+z');
    await until('the old place', async () => (await place()).join() === before.join());
  });

  test('a ring dragged is put down to a sixteenth of an inch, in one undo step', async () => {
    const before = await place();
    await grid.frame.evaluate((row) => {
      const target = document.querySelector(`.picture [data-row="part/${row}"]`);
      const picture = document.querySelector('.picture');
      if (target === null || picture === null) return;
      Object.assign(picture, { setPointerCapture: () => undefined });
      const box = target.getBoundingClientRect();
      const [x, y] = [box.left + box.width / 2, box.top + box.height / 2];
      const send = (type: string, by: number): void => {
        const at = { clientX: x + by, clientY: y + by / 2 };
        target.dispatchEvent(
          new PointerEvent(type, { ...at, pointerId: 1, button: 0, bubbles: true }),
        );
      };
      send('pointerdown', 0);
      send('pointermove', 12);
      send('pointermove', 20);
      send('pointerup', 20);
    }, ring);
    await until('another place', async () => (await place()).join() !== before.join());
    for (const text of await place()) expect(text).toMatch(/^-?\d*( ?\d+\/(2|4|8|16))? in$/);
    await grid.goTo(ring, 'name');
    await workbench.page.keyboard.press('Control+z');
    await until('the old place', async () => (await place()).join() === before.join());
  });

  test.each(['section', 'strip'])(
    'the %s of the ring is drawn, with its words',
    async (picture) => {
      await choose('picture', picture);
      await grid.frame.locator('[data-panel="panel"] .picture .area.outline').first().waitFor();
      expect(
        await grid.frame.locator('[data-panel="panel"] .panel-words li').count(),
      ).toBeGreaterThan(1);
    },
  );

  test('the skin is worked out, painted, and turns with the keys', async () => {
    await choose('picture', 'skin');
    const canvas = grid.frame.locator('.skin-canvas');
    await canvas.waitFor();
    await canvas.focus();
    const painted = (): Promise<string> =>
      canvas.evaluate((one) => (one as HTMLCanvasElement).toDataURL());
    const before = await until('a skin', async () => {
      const shown = await painted();
      return shown.length > 5000 ? shown : undefined;
    });
    await workbench.page.keyboard.press('ArrowLeft');
    await until('another look', async () => (await painted()) !== before);
    expect(await grid.frame.locator('.legend-ticks').innerText()).toMatch(/in/);
  });

  test('the picture takes the place of the grid and gives it back', async () => {
    await choose('picture', 'plan');
    const larger = grid.frame.locator('[data-action="panel-larger"]').first();
    const rows = grid.frame.locator('[data-grid]').first();
    await larger.click();
    await rows.waitFor({ state: 'hidden' });
    expect(await findings(grid.frame)).toEqual([]);
    await larger.click();
    await rows.waitFor({ state: 'visible' });
  });

  test('the accessibility checker finds nothing in any picture', async () => {
    const found: string[] = [];
    for (const picture of ['plan', 'section', 'skin', 'strip']) {
      await choose('picture', picture);
      found.push(...(await findings(grid.frame)).map((line) => `${picture}: ${line}`));
    }
    expect(found).toEqual([]);
  });

  test('a traced outline is seen below its questions before it is agreed to', async () => {
    await grid.goTo('door_base', 'name');
    await workbench.command('Panelwright: Trace Outline from Measured Points…');
    await grid.frame.locator('.trace-list').waitFor();
    await workbench.page.keyboard.type('0, 0\n24, 0\n26, 9\n12, 15\n0, 11');
    await grid.frame.locator('.trace-picture .area').waitFor();
    const seen = await grid.frame.evaluate(preview);
    expect(seen).toMatchObject({ below: true, within: true });
    // A see-through grey: whoever draws it black has lost the colours of pictures.
    expect(seen.fill).toMatch(/0\.08/);
    await workbench.page.keyboard.press('Escape');
    await grid.frame.locator('dialog').waitFor({ state: 'detached' });
  });

  test('the content security policy refused nothing', () => {
    expect(workbench.violations).toEqual([]);
  });
});
