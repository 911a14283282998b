import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { active, click, openPage, type OpenPage } from './page/open-page.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let page: OpenPage;

/** Long enough for a layout to be asked for, answered and painted. */
async function painted(): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 220));
}

beforeEach(async () => {
  page = await openPage();
  click('[data-pane="cut"]');
  await painted();
});

afterEach(() => {
  document.body.replaceChildren();
});

describe('the cut pane', () => {
  test('asks for no layout until it is looked at', async () => {
    page = await openPage();
    await painted();
    expect(page.host.asked.some((one) => one.type === 'ask' && one.question.ask === 'cut')).toBe(
      false,
    );
  });

  test('tells how many sheets there are, and that fewer are impossible', () => {
    const facts = document.querySelector('.cut-facts')?.textContent ?? '';
    expect(facts).toContain('laid out: 1 sheet');
    expect(facts).toContain('fewer than 1 is impossible');
  });

  test('a part that is pressed brings the cursor to its row', async () => {
    const part = document.querySelector('.cut-pane [data-row="part/ring_1"]');
    part?.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    await painted();
    expect(active()).toContain('ring_1');
  });

  test('another material is asked for by its line', async () => {
    const list = document.querySelector<HTMLSelectElement>('[data-choice="cut-line"]');
    if (list === null) throw new Error('No list of materials.');
    list.value = 'mdf';
    list.dispatchEvent(new Event('change', { bubbles: true }));
    await painted();
    const asked = page.host.asked.flatMap((one) =>
      one.type === 'ask' && one.question.ask === 'cut' ? [one.question.wish.line] : [],
    );
    expect(asked.at(-1)).toBe('mdf');
  });

  test('a bar shows while a better layout is looked for, and is gone when it is found', async () => {
    const bar = document.querySelector<HTMLProgressElement>('.cut-looking');
    const list = document.querySelector<HTMLSelectElement>('[data-choice="cut-line"]');
    if (bar === null || list === null) throw new Error('No bar or no list.');
    expect(bar.hidden).toBe(true);
    list.value = 'mdf';
    list.dispatchEvent(new Event('change', { bubbles: true }));
    await painted();
    expect(bar.hidden).toBe(false);
    expect(bar.getAttribute('aria-label')).toBe('A better layout is being looked for');
    expect(bar.hasAttribute('value')).toBe(false);
    page.host.tell({ type: 'progress', about: 'layout mdf', share: 0.4 });
    page.host.tell({ type: 'progress', about: 'layout board', share: 0.9 });
    expect(bar.value).toBe(0.4);
    page.host.tell({ type: 'progress', about: 'layout mdf', share: 0 });
    expect(bar.hasAttribute('value')).toBe(false);
    list.value = 'board';
    list.dispatchEvent(new Event('change', { bubbles: true }));
    await painted();
    expect(bar.hidden).toBe(true);
  });

  test('the chosen part is locked where it lies, by the button and by the key', async () => {
    const part = document.querySelector<SVGElement>('.cut-pane [data-row="part/ring_1"]');
    const shown = (label: string): boolean =>
      document
        .querySelector(`.cut-pane [data-action="lock-in-place"][aria-label="${label}"]`)
        ?.closest('[hidden]') === null;
    part?.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    await painted();
    expect([shown('Lock in place'), shown('Unlock')]).toEqual([true, false]);
    const lock = {
      kind: 'lock',
      line: 'board',
      sheet: 0,
      row: { table: 'part', id: 'ring_1', occurrence: 0 },
    };
    click('.cut-pane [data-action="lock-in-place"]');
    await painted();
    expect(page.host.edits.at(-1)).toEqual([lock]);
    const again = document.querySelector('.cut-pane [data-row="part/ring_1"]');
    again?.dispatchEvent(new KeyboardEvent('keydown', { key: 'l', bubbles: true }));
    await painted();
    expect(page.host.edits).toHaveLength(2);
    expect(page.host.edits.at(-1)).toEqual([lock]);
  });

  test('a locked part can be unlocked', async () => {
    const list = document.querySelector<HTMLSelectElement>('[data-choice="cut-line"]');
    if (list === null) throw new Error('No list of materials.');
    list.value = 'mdf';
    list.dispatchEvent(new Event('change', { bubbles: true }));
    await painted();
    const part = document.querySelector('.cut-pane [data-row="part/ring_1"]');
    part?.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    await painted();
    const unlock = document.querySelector('.cut-pane [aria-label="Unlock"]');
    expect(unlock?.closest('[hidden]')).toBeNull();
  });

  test('stocks are compared when it is asked for', async () => {
    const compare = [...document.querySelectorAll('.cut-pane button')].find(
      (one) => one.textContent === 'Compare stocks',
    );
    compare?.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    await painted();
    expect(document.querySelector('.cut-others')?.textContent).toBe('half: 2 for 22.00 USD');
  });
});
