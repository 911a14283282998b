import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  active,
  clipboard,
  goTo,
  openPage,
  press,
  settle,
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

describe('the clipboard', () => {
  test('a block goes out as text and comes back with its formulas, in one gesture', async () => {
    goTo(page, 'ring_1', 'tilt');
    press('Shift+ArrowRight');
    const data = clipboard('copy');
    expect(data.get('text/plain')).toBe('15 deg\t15 deg → 2 5/8 in');
    goTo(page, 'baffle_2', 'tilt');
    clipboard('paste', data);
    await settle();
    expect(page.host.edits).toHaveLength(1);
    expect(page.host.cell('baffle_2', 'depth')).toMatch(/^=ROUNDUPTO/);
  });

  test('one value fills a selected range', async () => {
    goTo(page, 'ring_1', 'tilt');
    press('Shift+ArrowDown');
    clipboard('paste', new Map([['text/plain', '9 deg\n']]));
    await settle();
    expect(page.host.cell('ring_1', 'tilt')).toBe('9 deg');
    expect(page.host.cell('baffle_2', 'tilt')).toBe('9 deg');
  });

  test('results and locked rows are left alone', async () => {
    goTo(page, 'base_10', 'qty');
    clipboard('paste', new Map([['text/plain', '3\t1 sq ft\n4\t2 sq ft']]));
    await settle();
    expect(page.host.edits[0]?.map((edit) => edit.kind === 'type' && edit.cell.id)).toEqual([
      'base_10',
    ]);
  });

  test('cut takes the cells away', async () => {
    goTo(page, 'ring_1', 'tilt');
    expect(clipboard('cut').get('text/plain')).toBe('15 deg');
    await settle();
    expect(page.host.cell('ring_1', 'tilt')).toBe('');
  });
});

describe('rows', () => {
  test('Delete clears the selection in one gesture', async () => {
    goTo(page, 'ring_1', 'name');
    press('Shift+ArrowDown');
    press('Delete');
    await settle();
    expect(page.host.edits[0]).toHaveLength(2);
    expect(page.host.cell('baffle_2', 'name')).toBe('');
  });

  test('a new row is inserted below and gets the cursor', async () => {
    goTo(page, 'ring_1', 'name');
    page.app.receive({ type: 'do', name: 'insertRow', argument: 'shim' });
    await settle();
    expect(active()).toBe('new1_shim/name');
    expect(page.entry.closest('[data-row]')?.getAttribute('data-row')).toBe('new1_shim');
  });

  test('a command from the menu acts on the row that was clicked', async () => {
    goTo(page, 'ring_1', 'name');
    const argument = JSON.stringify({ webviewSection: 'cell', table: 'part', row: 'ring_1' });
    page.app.receive({ type: 'do', name: 'duplicateRow', argument });
    await settle();
    expect(page.host.edits).toMatchObject([[{ kind: 'duplicate', row: { id: 'ring_1' } }]]);
    expect(active()).toBe('ring_1_copy/name');
  });

  test('Ctrl+Enter asks what the row is to be', async () => {
    goTo(page, 'ring_1', 'name');
    press('Ctrl+Enter');
    await settle();
    const filter = document.querySelector<HTMLInputElement>('dialog input');
    if (filter === null) throw new Error('No dialog.');
    filter.value = 'vin';
    filter.dispatchEvent(new Event('input', { bubbles: true }));
    filter.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true }));
    await settle();
    expect(page.host.edits[0]).toMatchObject([{ kind: 'insert', table: 'part', rowKind: 'vinyl' }]);
  });

  test('the cursor follows its row when the row moves, and stays near when it is deleted', async () => {
    goTo(page, 'ring_1', 'tilt');
    press('Alt+ArrowDown');
    await settle();
    expect(active()).toBe('ring_1/tilt');
    press('Ctrl+Shift+K');
    await settle();
    expect(active()).toMatch(/\/tilt$/);
    expect(document.activeElement).toBe(page.entry);
  });
});

describe('saving', () => {
  const saves = (): number => page.host.asked.filter(({ type }) => type === 'save').length;

  test('Ctrl+S in a cell that is being typed saves once the host has the edit', async () => {
    goTo(page, 'ring_1', 'tilt');
    type('18 deg');
    press('Ctrl+s');
    expect(page.host.asked.slice(-2)).toMatchObject([
      { type: 'ask', question: { ask: 'edit' } },
      { type: 'save' },
    ]);
    await settle();
    press('Ctrl+s');
    // Nothing is under way: the key is left to VS Code.
    expect(saves()).toBe(1);
  });
});

describe('cells that clip', () => {
  test('only what may not find room is clipped, whatever width a column is given', () => {
    goTo(page, 'ring_1', 'tilt');
    const { view } = page.app.grid;
    const cell = document.querySelector('[data-cell="ring_1/tilt"]');
    expect(cell?.textContent).toBe('15 deg');
    expect(cell?.classList.contains('fits')).toBe(true);
    view.setWidth(page.app.grid.columnOf('tilt'), 40);
    expect(cell?.classList.contains('fits')).toBe(false);
    view.setWidth(page.app.grid.columnOf('tilt'), 120);
    expect(cell?.classList.contains('fits')).toBe(true);
  });
});
