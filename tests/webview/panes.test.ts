import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  active,
  click,
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

function tiltOnCard(): HTMLTextAreaElement {
  const field = document.querySelector<HTMLTextAreaElement>('[data-field="tilt"] textarea');
  if (field === null) throw new Error('No tilt on the card.');
  return field;
}

describe('panes', () => {
  test('the card shows the row and edits it like a cell', async () => {
    goTo(page, 'ring_1', 'name');
    await settle();
    const field = tiltOnCard();
    field.focus();
    type('21 deg');
    press('Enter');
    await settle();
    expect(page.host.cell('ring_1', 'tilt')).toBe('21 deg');
    expect(document.activeElement?.closest('[data-field]')?.getAttribute('data-field')).toBe(
      'depth',
    );
  });

  test('a cell typed on the card shows it although the host takes its time', async () => {
    page.host.delay = () => new Promise(() => undefined);
    goTo(page, 'ring_1', 'tilt');
    await settle();
    const field = tiltOnCard();
    field.focus();
    type('19 deg');
    press('Enter');
    await vi.waitFor(() => {
      expect(shown('ring_1', 'tilt')).toBe('19 deg');
    });
    expect(page.host.cell('ring_1', 'tilt')).toBe('15 deg');
  });

  test('a key behind Enter goes to the next field, though its focus waits for the answer', async () => {
    page.host.delay = () => new Promise(() => undefined);
    goTo(page, 'ring_1', 'tilt');
    await settle();
    const field = tiltOnCard();
    field.focus();
    type('19 deg');
    press('Enter');
    expect([document.activeElement, field.value]).toEqual([field, '19 deg']);
    const hears: string[] = [];
    const hear = ({ target, key }: KeyboardEvent): void => {
      const line = (target as Element).closest('[data-field]');
      hears.push(`${line?.getAttribute('data-field') ?? ''} ${key}`);
    };
    document.addEventListener('keydown', hear, true);
    press('F4');
    document.removeEventListener('keydown', hear, true);
    expect(hears).toEqual(['depth F4']);
    expect(document.activeElement?.id).toBe('card-depth');
  });

  test('a text of the card that is refused stands with the notice, its field as it was', async () => {
    goTo(page, 'ring_1', 'tilt');
    await settle();
    const field = tiltOnCard();
    field.focus();
    type('5 EUR');
    press('Enter');
    expect(field.value).toBe('5 EUR');
    await vi.waitFor(() => {
      expect(field.value).toBe('15 deg');
    });
    expect(document.querySelector('.notice')?.textContent).toContain('5 EUR');
  });

  test('a default is lighter: the placeholder of an empty field', async () => {
    goTo(page, 'base', 'name');
    await settle();
    const field = document.querySelector<HTMLTextAreaElement>('[data-field="depth"] textarea');
    expect([field?.value, field?.placeholder]).toEqual(['', '5/8 in']);
  });

  test('checks that do not pass stand before the fields of the card, those that pass behind', async () => {
    goTo(page, 'ring_1', 'name');
    await settle();
    const order = [
      ...document.querySelectorAll<HTMLElement>('.card .check-line, .card [data-field="tilt"]'),
    ];
    expect(order.map(({ dataset }) => dataset['outcome'] ?? dataset['field'])).toEqual([
      'fail',
      'near',
      'tilt',
      'pass',
    ]);
  });

  test('a problem leads to its cell', () => {
    click('[data-pane="problems"]');
    click('.problem:nth-child(2) [data-action="go-problem"]');
    expect(active()).toMatch(/\/use$/);
  });

  test('the price stands in a pane of its own, from materials to the total, with the hours behind it', async () => {
    click('[data-pane="price"]');
    await settle();
    const texts = (selector: string): readonly (string | null)[] =>
      [...document.querySelectorAll(`.price-pane ${selector}`)].map(
        ({ textContent }) => textContent,
      );
    expect(texts('.price-list[aria-label="Price"] .number')).toEqual([
      '48.00 USD',
      '68.00 USD',
      '116.00 USD',
    ]);
    expect(texts('.price-total .small')).toEqual(['+68.00 USD since opened']);
    expect(texts('.hours-phase .hours-label')).toEqual(['Structure', 'Skin']);
    expect(texts('.price-open .small')).toEqual(['Cure has no time.']);
    expect(document.querySelectorAll('.price-pane [data-action="go-row"]')).toHaveLength(3);
  });

  test('checks stand in a pane of their own, each told by picture and word', () => {
    click('[data-pane="checks"]');
    const lines = [...document.querySelectorAll('.checks-pane .check-line')];
    expect(lines.map((line) => line.querySelector('.check-word')?.textContent)).toEqual([
      'fails',
      'near',
      'pass',
    ]);
    expect(lines[0]?.querySelector('.check-message')?.textContent).toContain('1/8 in too much');
    expect(document.querySelector('[data-pane="checks"] .tab-count')?.textContent).toBe('1');
    click('.checks-pane .check-line:first-child [data-action="go-check"]');
  });

  test('cautions stand under the bill, closed until somebody opens them, and stay as they were left', async () => {
    const list = document.querySelector<HTMLDetailsElement>('[data-list="cautions"]');
    expect([list?.open, list?.querySelector('summary')?.textContent]).toEqual([
      false,
      'Cautions (1)',
    ]);
    expect(list?.textContent).toContain('1 mg/m³ (a rule)');
    if (list !== null) list.open = true;
    list?.dispatchEvent(new Event('toggle'));
    await settle();
    expect(page.kept()).toMatchObject({ cautionsOpen: true });
    goTo(page, 'ring_1', 'tilt');
    click('[data-knob="ring_1/tilt"] [data-action="knob-up"]');
    await settle();
    expect(list?.open).toBe(true);
  });

  test('a knob steps its cell', async () => {
    click('[data-knob="ring_1/tilt"] [data-action="knob-up"]');
    await settle();
    expect(page.host.cell('ring_1', 'tilt')).toBe('16 deg');
    expect(document.querySelector('[data-knob="ring_1/tilt"] output')?.textContent).toBe('16 deg');
  });

  test('the bill marks what the last edit changed', async () => {
    goTo(page, 'base', 'qty');
    type('6');
    press('Enter');
    await settle();
    const line = document.querySelector('[data-line="panelboard_3"]');
    expect(line?.className).toMatch(/fresh/);
  });

  test('the formula bar edits the active cell', async () => {
    goTo(page, 'ring_1', 'tilt');
    const bar = document.querySelector<HTMLTextAreaElement>('[data-entry="bar"]');
    bar?.focus();
    expect(bar?.value).toBe('15 deg');
    type('17 deg');
    press('Enter');
    await settle();
    expect(page.host.cell('ring_1', 'tilt')).toBe('17 deg');
    expect(active()).toBe('baffle_2/tilt');
  });

  test('sheets are tabs, each with its own cursor', () => {
    goTo(page, 'ring_1', 'tilt');
    click('[data-sheet="driver"]');
    expect(active()).toBe('mid/name');
    click('[data-sheet="part"]');
    expect(active()).toBe('ring_1/tilt');
  });
});

describe('states', () => {
  test.each(['read-only', 'conflicted', 'unreadable'] as const)(
    '%s takes no edit and says so',
    async (name) => {
      page = await openPage(name);
      goTo(page, 'ring_1', 'tilt');
      type('20 deg');
      press('Enter');
      await settle();
      expect(page.host.edits).toHaveLength(0);
      expect(document.querySelector('[data-banner]')?.getAttribute('data-banner')).toBe(name);
      click('[data-banner] [data-action="open-as-text"]');
      expect(
        page.host.asked.some(
          (message) => message.type === 'command' && message.name === 'openAsText',
        ),
      ).toBe(true);
    },
  );

  test('an empty job offers kits, or an empty grid', async () => {
    page = await openPage('empty');
    expect(document.querySelectorAll('.empty-page .kit')).toHaveLength(3);
    click('[data-action="start-blank"]');
    expect(document.querySelector<HTMLElement>('.empty-page')?.hidden).toBe(true);
  });

  test('a kit asks its questions and is inserted with the answers', async () => {
    page = await openPage('empty');
    click('.empty-page [data-argument="driver_position"]');
    await settle();
    expect(document.querySelectorAll('dialog [data-question]')).toHaveLength(4);
    click('dialog [data-action="dialog-agree"]');
    await settle();
    expect(page.host.edits[0]).toMatchObject([
      { kind: 'kit', kit: 'driver_position', answers: { id: 'mid', driver: 'mid', grille: 'yes' } },
    ]);
  });

  test('sheet, cursor and widths come back when the page is opened again', async () => {
    goTo(page, 'ring_1', 'tilt');
    press('Alt+Shift+ArrowRight');
    const width = page.app.grid.view.widths[page.app.grid.columnOf('tilt')];
    page = await openPage('ready', page.kept());
    expect(active()).toBe('ring_1/tilt');
    expect(page.app.grid.view.widths[page.app.grid.columnOf('tilt')]).toBe(width);
    expect(width).toBe(92);
  });
});
