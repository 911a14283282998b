import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  active,
  goTo,
  openPage,
  press,
  settle,
  shown,
  type,
  type OpenPage,
} from './page/open-page.ts';

// A page is a few thousand elements: slow to make on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let page: OpenPage;

beforeEach(async () => {
  page = await openPage();
});

afterEach(() => {
  document.body.replaceChildren();
});

/** The cursor follows the frame that shows what was typed. */
async function until(cell: string): Promise<void> {
  await vi.waitFor(() => {
    expect(active()).toBe(cell);
  });
}

/** What people see of a cell: the text of the entry that stands over it, else its own. */
function seen(id: string, column: string): string {
  const entry = document.querySelector<HTMLTextAreaElement>(
    `[data-cell="${id}/${column}"] .cell-entry.open`,
  );
  return entry?.value ?? shown(id, column);
}

describe('typing', () => {
  test('typing replaces a cell, Enter finishes it and goes down', async () => {
    goTo(page, 'ring_1', 'tilt');
    type('18 deg');
    press('Enter');
    expect(seen('ring_1', 'tilt')).toContain('18 deg');
    await until('baffle_2/tilt');
    expect(document.querySelector('.cell-entry.open')).toBeNull();
    expect(shown('ring_1', 'tilt')).toBe('18 deg');
    expect(page.host.cell('ring_1', 'tilt')).toBe('18 deg');
  });

  test('what was typed is seen before the host has answered', async () => {
    let answer: () => void = () => undefined;
    page.host.delay = () =>
      new Promise((resolve) => {
        answer = resolve;
      });
    goTo(page, 'ring_1', 'tilt');
    type('18 deg');
    press('Enter');
    expect(seen('ring_1', 'tilt')).toBe('18 deg');
    expect(page.host.cell('ring_1', 'tilt')).toBe('15 deg');
    // An answer that takes longer is not waited for.
    await until('baffle_2/tilt');
    expect(document.querySelector('.cell-entry.open')).toBeNull();
    expect(shown('ring_1', 'tilt')).toBe('18 deg');
    expect(page.host.cell('ring_1', 'tilt')).toBe('15 deg');
    answer();
    await settle();
    expect(page.host.cell('ring_1', 'tilt')).toBe('18 deg');
  });

  test('what is finished does not stand over another row when the grid is scrolled', () => {
    page.host.delay = () => new Promise(() => undefined);
    goTo(page, 'ring_1', 'tilt');
    type('18 deg');
    page.app.grid.view.scroller.dispatchEvent(new Event('scroll'));
    expect(seen('ring_1', 'tilt')).toBe('18 deg');
    press('Enter');
    expect(document.querySelector('.cell-entry.open')).not.toBeNull();
    page.app.grid.view.scroller.dispatchEvent(new Event('scroll'));
    expect(document.querySelector('.cell-entry.open')).toBeNull();
  });

  test('a key behind Enter goes to the cell below, though the cursor waits for the answer', async () => {
    page.host.delay = () => new Promise(() => undefined);
    goTo(page, 'ring_1', 'tilt');
    type('18 deg');
    press('Enter');
    expect(active()).toBe('ring_1/tilt');
    press('ArrowRight');
    expect(active()).toBe('baffle_2/depth');
    await settle();
    expect([active(), page.host.edits.length]).toEqual(['baffle_2/depth', 1]);
  });

  test('Escape leaves the cell as it was', async () => {
    goTo(page, 'ring_1', 'tilt');
    type('99');
    press('Escape');
    await settle();
    expect(page.host.edits).toHaveLength(0);
    expect(page.entry.value).toBe('15 deg');
  });

  test('F2 edits the text of the file, arrows then stay in it', () => {
    goTo(page, 'ring_1', 'depth');
    press('F2');
    expect(page.entry.value).toMatch(/^=ROUNDUPTO/);
    press('ArrowLeft');
    expect(page.app.grid.editor.editing).toBe(true);
    press('Escape');
    expect(page.app.grid.editor.editing).toBe(false);
  });

  test('an arrow finishes what typing began and moves', async () => {
    goTo(page, 'ring_1', 'tilt');
    type('20 deg');
    press('ArrowRight');
    await until('ring_1/depth');
    expect(page.host.cell('ring_1', 'tilt')).toBe('20 deg');
  });

  test('Enter after a run of Tabs goes below its first cell', async () => {
    goTo(page, 'ring_1', 'tilt');
    type('20 deg');
    press('Tab');
    type('3 in');
    press('Enter');
    await until('baffle_2/tilt');
  });

  test('a result is not typed over', async () => {
    goTo(page, 'ring_1', 'charge');
    type('5');
    press('Enter');
    await settle();
    expect(page.host.edits).toHaveLength(0);
    expect(shown('ring_1', 'charge')).toBe('$4.35');
  });

  test('an edit unchanged is no edit', async () => {
    goTo(page, 'ring_1', 'tilt');
    press('F2');
    press('Enter');
    await settle();
    expect(page.host.edits).toHaveLength(0);
  });

  test('typing an id renames the row', async () => {
    goTo(page, 'ring_1', 'id');
    type('mid_ring');
    press('Enter');
    await settle();
    expect(page.host.edits).toEqual([
      [{ kind: 'rename', row: { table: 'part', id: 'ring_1', occurrence: 0 }, id: 'mid_ring' }],
    ]);
  });

  test('Ctrl+Enter writes the text into every selected cell in one gesture', async () => {
    goTo(page, 'ring_1', 'tilt');
    press('Shift+ArrowDown');
    press('Shift+ArrowDown');
    type('12 deg');
    press('Ctrl+Enter');
    await settle();
    expect(page.host.edits).toHaveLength(1);
    expect(page.host.edits[0]).toHaveLength(3);
  });

  test('a hundred quick edits are all kept', async () => {
    goTo(page, 'ring_1', 'tilt');
    for (let tilt = 1; tilt <= 100; tilt += 1) {
      type(`${String(tilt)} deg`);
      press('Enter');
      press('ArrowUp');
    }
    await settle();
    expect(page.host.edits).toHaveLength(100);
    expect(page.host.cell('ring_1', 'tilt')).toBe('100 deg');
    expect(shown('ring_1', 'tilt')).toContain('100 deg');
  });
});

describe('a refused edit', () => {
  test('puts the cell back, opens it again with what was typed and says why', async () => {
    goTo(page, 'ring_1', 'tilt');
    type('48.50 EUR');
    press('Enter');
    await settle();
    expect(document.querySelector('[data-notice]')?.textContent).toContain('in euros');
    expect(page.app.grid.editor.editing).toBe(true);
    expect(page.entry.value).toBe('48.50 EUR');
    expect(active()).toBe('ring_1/tilt');
    press('Escape');
    expect(page.entry.value).toBe('15 deg');
  });
});

describe('pickers', () => {
  test('typing narrows the list and Enter takes the marked line', async () => {
    goTo(page, 'ring_1', 'material');
    type('marine');
    await settle();
    expect(document.querySelectorAll('.suggestion')).toHaveLength(1);
    press('Enter');
    await settle();
    expect(page.host.cell('ring_1', 'material')).toBe('vinyl_black');
  });

  test('opened and left with Enter, the cell keeps what it holds', async () => {
    goTo(page, 'ring_1', 'material');
    press('Enter');
    await settle();
    expect(document.querySelector('.suggestion[aria-selected="true"]')?.textContent).toContain(
      'MDF',
    );
    press('Enter');
    await settle();
    expect(page.host.edits).toHaveLength(0);
  });
});

describe('completion', () => {
  test('Tab takes the first name, Enter finishes the formula', async () => {
    goTo(page, 'ring_1', 'depth');
    type('=ti');
    await settle();
    press('Tab');
    expect(page.entry.value).toBe('=tilt');
    press('Enter');
    await settle();
    expect(page.host.cell('ring_1', 'depth')).toBe('=tilt');
  });
});
