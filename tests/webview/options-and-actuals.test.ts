import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { active, click, openPage, type OpenPage } from './page/open-page.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let page: OpenPage;

/** Long enough for an answer to be asked for and painted, after an edit too. */
async function painted(ms = 220): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, ms));
}

function asked(what: string): number {
  return page.host.asked.filter((one) => one.type === 'ask' && one.question.ask === what).length;
}

function commands(): readonly string[] {
  return page.host.asked.flatMap((one) => (one.type === 'command' ? [one.name] : []));
}

function textOf(selector: string): string {
  return document.querySelector(selector)?.textContent ?? '';
}

function edit(): void {
  const knob = { table: 'part', id: 'ring_1', occurrence: 0, column: 'tilt' };
  page.host.receive({ type: 'step-knob', knob, by: 1 });
}

beforeEach(async () => {
  page = await openPage();
});

afterEach(() => {
  document.body.replaceChildren();
});

describe('the options pane', () => {
  test('holds figures side by side, and says what each option sets', async () => {
    click('[data-pane="options"]');
    await painted();
    const table = textOf('.option-figures');
    for (const words of ['As it is', 'Leans further', '100.00 USD', '120.00 USD', '+20.00 USD'])
      expect(table).toContain(words);
    expect(textOf('[data-option="steep"]')).toContain('15 deg→ 22 deg');
    expect(textOf('[data-option="odd#1"]')).toContain('It cannot be written.');
    expect(textOf('.options-pane')).toContain('Not in the weight: magnets.');
  });

  test('Accept is one gesture that names the option; a cell leads into the grid', async () => {
    click('[data-pane="options"]');
    await painted();
    click('[data-option="odd#1"] [data-action="accept-option"]');
    await painted();
    const row = { table: 'option', id: 'odd', occurrence: 1 };
    expect(page.host.edits.at(-1)).toEqual([{ kind: 'accept-option', row }]);
    click('[data-option="steep"] .option-cell [data-action="go-row"]');
    await painted();
    expect(active()).toBe('ring_1/tilt');
  });

  test('is asked for only while it is looked at, once for a burst of edits', async () => {
    edit();
    await painted(700);
    expect(asked('options')).toBe(0);
    click('[data-pane="options"]');
    await painted();
    for (let count = 0; count < 3; count += 1) {
      edit();
      await painted(150);
    }
    expect(asked('options')).toBe(1);
    await painted(700);
    expect(asked('options')).toBe(2);
  });

  test('a button adds one, and Compare Options brings the pane', async () => {
    page.app.receive({ type: 'do', name: 'compareOptions', argument: '' });
    await painted();
    expect(document.querySelector('.aside')?.getAttribute('data-shows')).toBe('options');
    click('.options-pane [data-action="add-option"]');
    expect(commands()).toEqual(['addOption']);
  });
});

describe('the actuals pane', () => {
  async function show(): Promise<HTMLTextAreaElement> {
    page.app.receive({ type: 'do', name: 'showActuals', argument: '' });
    await painted();
    const entry = document.querySelector<HTMLTextAreaElement>('[data-actual="ring_1"] textarea');
    if (entry === null) throw new Error('No entry for the ring.');
    return entry;
  }

  function press(entry: HTMLElement, key: string): void {
    entry.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
  }

  test('holds estimate and actual side by side and says what cannot be compared', async () => {
    const entry = await show();
    expect(entry.getAttribute('aria-label')).toBe('Midbass ring, took');
    expect(textOf('[data-actual="ring_1"]')).toContain('3 sq ft');
    expect(textOf('[data-actual="ring_2"]')).toContain('Not in sq ft.');
    expect(textOf('.actual-timed')).toBe('Timed: 2 h for 1 h, +1 h, +100 %.');
  });

  test('what is typed goes to the cell of its row, stands there meanwhile, and Enter goes on', async () => {
    const entry = await show();
    entry.focus();
    entry.value = '4 sqft';
    press(entry, 'Enter');
    expect(entry.value).toBe('4 sqft');
    expect(document.activeElement?.closest('[data-actual]')?.getAttribute('data-actual')).toBe(
      'ring_2',
    );
    await painted(400);
    const cell = { table: 'part', id: 'ring_1', occurrence: 0, column: 'used' };
    expect(page.host.edits).toEqual([[{ kind: 'type', cell, text: '4 sqft' }]]);
    expect(textOf('[data-actual="ring_1"]')).toContain('+1 sq ft, +33 %');
  });

  test('a text that is refused is told and the cell is shown as it was', async () => {
    const entry = await show();
    entry.focus();
    entry.value = '4 EUR';
    press(entry, 'Enter');
    await painted();
    expect(entry.value).toBe('');
    expect(textOf('.notice')).toContain('“4 EUR” is in euros');
  });

  test('Escape leaves the cell as it was', async () => {
    const entry = await show();
    entry.focus();
    entry.value = '9 sqft';
    press(entry, 'Escape');
    await painted();
    expect(entry.value).toBe('');
    expect(page.host.edits).toEqual([]);
  });

  test('a button proposes rates', async () => {
    await show();
    click('[data-action="update-rates"]');
    expect(commands()).toEqual(['updateRates']);
  });
});
