import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { active, click, openPage, type OpenPage } from './page/open-page.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let page: OpenPage;

/** Long enough for a plan to be asked for, answered and painted. */
async function painted(): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 220));
}

function asked(what: string): number {
  return page.host.asked.filter((one) => one.type === 'ask' && one.question.ask === what).length;
}

function textOf(selector: string): string {
  return document.querySelector(selector)?.textContent ?? '';
}

beforeEach(async () => {
  page = await openPage();
});

afterEach(() => {
  document.body.replaceChildren();
});

describe('the mix pane', () => {
  test('is asked for once it is looked at, and shows pots, measures, error and warnings', async () => {
    await painted();
    expect(asked('mix')).toBe(0);
    click('[data-pane="mix"]');
    await painted();
    expect(asked('mix')).toBe(1);
    const coat = textOf('.mix-coat');
    for (const words of ['First coat', '2 pots', '240 g', '4.5 ml', '4.2 % too much', 'too cold'])
      expect(coat).toContain(words);
    expect(textOf('.mix-pane')).toContain('Second coat');
    expect(textOf('.mix-pane')).toContain('it has no percentage.');
  });

  test('a coat’s name brings the cursor to its row', async () => {
    click('[data-pane="mix"]');
    await painted();
    click('.mix-coat [data-action="go-row"]');
    await painted();
    expect(active()).toContain('ring_1');
  });

  test('asks again after an edit, and offers the gel test while none stands behind it', async () => {
    click('[data-pane="mix"]');
    await painted();
    const offer = document.querySelector<HTMLElement>('.mix-pane [data-argument="gel_test"]');
    expect(offer?.hidden).toBe(false);
    page.host.receive({
      type: 'step-knob',
      knob: { table: 'part', id: 'ring_1', occurrence: 0, column: 'tilt' },
      by: 1,
    });
    await painted();
    expect(asked('mix')).toBe(2);
  });
});

describe('the schedule pane', () => {
  test('shows first and last day, bars and when each task begins and ends', async () => {
    click('[data-pane="schedule"]');
    await painted();
    expect(textOf('.schedule-pane .price-facts')).toContain('Wed 2026-11-25');
    expect(textOf('.schedule-pane .price-list')).toContain('8:00 to 9:00');
    expect(textOf('.schedule-pane .pane-notes')).toContain('Other jobs in the shop');
    expect(document.querySelector('.schedule-pane .picture [data-row]')).not.toBeNull();
  });
});

describe('what moves the price most', () => {
  test('is worked out when it is asked for, and a bar leads to its cell', async () => {
    click('[data-pane="price"]');
    await painted();
    expect(asked('cost-drivers')).toBe(0);
    click('.cost-drivers button');
    await painted();
    expect(textOf('.cost-drivers li')).toBe(
      'Midbass ring: tilt, 15 deg: 10 % less is −1.00 USD, 10 % more is +1.00 USD.',
    );
    document
      .querySelector('.cost-drivers [data-row="part/ring_1/tilt"]')
      ?.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    await painted();
    expect(active()).toBe('ring_1/tilt');
  });
});
