import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { active, goTo, openPage, press, settle, type OpenPage } from './page/open-page.ts';

// A page is a few thousand elements: slow to make on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let page: OpenPage;

beforeEach(async () => {
  page = await openPage();
});

afterEach(() => {
  document.body.replaceChildren();
});

function bar(): HTMLInputElement {
  const entry = document.querySelector<HTMLInputElement>('.find-entry');
  if (entry === null) throw new Error('There is no find bar.');
  return entry;
}

function look(text: string): void {
  bar().value = text;
  bar().dispatchEvent(new Event('input', { bubbles: true }));
}

function count(): string {
  return document.querySelector('.find-count')?.textContent ?? '';
}

function heading(group: string): HTMLButtonElement {
  const button = document.querySelector<HTMLButtonElement>(`[data-group="${group}"] button`);
  if (button === null) throw new Error(`${group} has no heading.`);
  return button;
}

function rows(): number {
  return page.app.grid.view.lines.keys.length;
}

describe('the find bar', () => {
  test('Ctrl+F looks from the cell under the cursor on, round the end and back', () => {
    goTo(page, 'base_0', 'name');
    press('Ctrl+f');
    expect(document.activeElement).toBe(bar());
    look('RING_');
    const first = active();
    expect(first).toMatch(/^ring_1\//);
    expect(count()).toMatch(/^1 of \d+$/);
    press('Shift+Enter');
    const last = active();
    expect(count()).toMatch(/^(\d+) of \1$/);
    press('Enter');
    expect(active()).toBe(first);
    expect(last).not.toBe(first);
    expect(document.activeElement).toBe(bar());
  });

  test('more letters look from the same cell as the first', () => {
    goTo(page, 'base_0', 'name');
    press('Ctrl+f');
    for (const text of ['r', 'ri', 'ring_']) look(text);
    expect(active()).toMatch(/^ring_1\//);
  });

  test('a formula is found by its text as well as by what it shows', () => {
    goTo(page, 'base_0', 'name');
    press('Ctrl+f');
    look('roundupto');
    expect(active()).toMatch(/\/depth$/);
  });

  test('what is nowhere says so and leaves the cursor', () => {
    goTo(page, 'ring_1', 'tilt');
    press('Ctrl+f');
    look('zebra');
    expect(count()).toBe('None');
    expect(active()).toBe('ring_1/tilt');
  });

  test('Escape goes back to the cell', () => {
    goTo(page, 'base_0', 'name');
    press('Ctrl+f');
    look('ring_1');
    press('Escape');
    expect(document.activeElement).toBe(page.entry);
    expect(active()).toBe('ring_1/id');
    expect(document.querySelector<HTMLElement>('.find-bar')?.hidden).toBe(true);
  });

  test('VS Code’s command opens it, and its keys do not edit rows meanwhile', async () => {
    goTo(page, 'ring_1', 'tilt');
    page.app.receive({ type: 'do', name: 'find', argument: '' });
    await settle();
    expect(document.activeElement).toBe(bar());
    const last = page.host.asked.findLast((message) => message.type === 'cursor');
    expect(last).toMatchObject({ type: 'cursor', editing: true });
  });
});

describe('groups', () => {
  test('a click on the heading collapses the group and the next one expands it', () => {
    const all = rows();
    const { group } = page.app.state.row('part', 'ring_1') ?? { group: '' };
    expect(heading(group).getAttribute('aria-expanded')).toBe('true');
    heading(group).click();
    expect(heading(group).getAttribute('aria-expanded')).toBe('false');
    expect(document.activeElement).toBe(heading(group));
    expect(rows()).toBeLessThan(all);
    expect(document.querySelector('[data-row="ring_1"]:not([hidden])')).toBeNull();
    heading(group).click();
    expect(rows()).toBe(all);
  });

  test('arrows reach the heading; Left collapses, Right expands, Down goes on to the rows', () => {
    const first = page.app.grid.view.lines.keys[0] ?? '';
    const { group } = page.app.state.row('part', first) ?? { group: '' };
    goTo(page, first, 'name');
    press('ArrowUp');
    expect(document.activeElement).toBe(heading(group));
    press('ArrowLeft');
    expect(heading(group).getAttribute('aria-expanded')).toBe('false');
    press('ArrowRight');
    expect(heading(group).getAttribute('aria-expanded')).toBe('true');
    press('ArrowDown');
    expect(active()).toBe(`${first}/name`);
    expect(document.activeElement).toBe(page.entry);
  });

  test('Ctrl+Shift+[ collapses the group of the row', () => {
    const { group } = page.app.state.row('part', 'ring_1') ?? { group: '' };
    goTo(page, 'ring_1', 'tilt');
    press('Ctrl+Shift+{');
    expect(document.activeElement).toBe(heading(group));
    expect(heading(group).getAttribute('aria-expanded')).toBe('false');
  });

  test('going to a row of a collapsed group expands it', () => {
    const { group } = page.app.state.row('part', 'ring_1') ?? { group: '' };
    heading(group).click();
    goTo(page, 'ring_1', 'tilt');
    expect(active()).toBe('ring_1/tilt');
    expect(heading(group).getAttribute('aria-expanded')).toBe('true');
  });

  test('with every group collapsed there is no active cell, and one comes back with its rows', () => {
    const groups = [...document.querySelectorAll<HTMLElement>('.row.group')].map(
      (row) => row.dataset['group'] ?? '',
    );
    for (const group of groups) heading(group).click();
    expect(rows()).toBe(0);
    expect(page.app.grid.activeCell).toBeUndefined();
    press('ArrowRight');
    expect(rows()).toBeGreaterThan(0);
    expect(page.app.grid.activeCell).toBeDefined();
  });

  test('what was collapsed stays so when the file is opened again', async () => {
    const { group } = page.app.state.row('part', 'ring_1') ?? { group: '' };
    heading(group).click();
    page = await openPage('ready', page.kept());
    expect(heading(group).getAttribute('aria-expanded')).toBe('false');
  });
});
