import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { active, click, goTo, openPage, press, settle, type OpenPage } from './page/open-page.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let page: OpenPage;

/** Long enough for a picture to be asked for, answered and painted. */
async function painted(): Promise<void> {
  await new Promise((resolve) => setTimeout(resolve, 220));
}

function mark(row: string): SVGElement {
  const found = document.querySelector<SVGElement>(`.picture [data-row="${row}"]`);
  if (found === null) throw new Error(`The picture has no ${row}.`);
  return found;
}

async function choose(list: string, value: string): Promise<void> {
  const chosen = document.querySelector<HTMLSelectElement>(`[data-choice="${list}"]`);
  if (chosen === null) throw new Error(`No list ${list}.`);
  chosen.value = value;
  chosen.dispatchEvent(new Event('change', { bubbles: true }));
  await painted();
}

function pointer(type: string, target: Element, x: number, y: number): void {
  target.dispatchEvent(
    new PointerEvent(type, {
      pointerId: 1,
      button: 0,
      clientX: x,
      clientY: y,
      bubbles: true,
      cancelable: true,
    }),
  );
}

function panelQuestions(): number {
  return page.host.asked.filter((one) => one.type === 'ask' && one.question.ask === 'panel').length;
}

beforeEach(async () => {
  page = await openPage();
  for (const root of document.querySelectorAll('.picture'))
    Object.assign(root, { setPointerCapture: () => undefined });
  click('[data-pane="panel"]');
  await painted();
  const root = document.querySelector('.picture');
  if (root !== null) Object.assign(root, { setPointerCapture: () => undefined });
});

afterEach(() => {
  document.body.replaceChildren();
});

describe('the panel pane', () => {
  test('asks for no picture until it is looked at', async () => {
    page = await openPage();
    await painted();
    expect(panelQuestions()).toBe(0);
    click('[data-pane="panel"]');
    await painted();
    expect(panelQuestions()).toBe(1);
  });

  test('each row is a button that says what it is and whether it can be moved', () => {
    const buttons = [...document.querySelectorAll('.picture [role="button"]')];
    expect(buttons.map((one) => one.getAttribute('aria-label'))).toEqual([
      'Base 0, base',
      'Ring 1, ring. Arrow keys move it.',
      'Baffle 2, baffle',
    ]);
  });

  test('a row pressed in the picture is under the cursor of the grid', () => {
    mark('part/baffle_2').dispatchEvent(new MouseEvent('click', { bubbles: true }));
    expect(active()).toMatch(/^baffle_2\//);
    expect(mark('part/baffle_2').getAttribute('aria-pressed')).toBe('true');
  });

  test('Enter on a row chooses it as a press does', () => {
    mark('part/ring_1').focus();
    press('Enter');
    expect(active()).toMatch(/^ring_1\//);
  });

  test('the row under the cursor stands out in the picture', () => {
    goTo(page, 'ring_1', 'tilt');
    expect(mark('part/ring_1').classList.contains('selected')).toBe(true);
    goTo(page, 'base', 'name');
    expect(mark('part/ring_1').classList.contains('selected')).toBe(false);
  });

  test('figures that would lie on one another are written once', () => {
    expect(document.querySelectorAll('.picture text.dimension')).toHaveLength(1);
  });

  test('a ring dragged takes its baffle along and is one gesture', async () => {
    const ring = mark('part/ring_1');
    pointer('pointerdown', ring, 100, 100);
    pointer('pointermove', ring, 120, 90);
    expect(mark('part/baffle_2').getAttribute('transform')).toMatch(/^translate\(/);
    expect(mark('part/baffle_2').getAttribute('transform')).toBe(ring.getAttribute('transform'));
    pointer('pointerup', ring, 120, 90);
    await painted();
    expect(page.host.edits).toHaveLength(1);
    const [edit] = page.host.edits[0] ?? [];
    if (edit?.kind !== 'place') throw new Error('Nothing was placed.');
    expect(edit.row).toEqual({ table: 'part', id: 'ring_1', occurrence: 0 });
    expect(edit.x).toBeGreaterThan(0);
    expect(edit.y).toBeGreaterThan(0);
    expect([edit.x % 1, edit.y % 1]).toEqual([0, 0]);
  });

  test('seen as the other hand, a drag to the right moves to the front', async () => {
    await choose('hand', 'left');
    const ring = mark('part/ring_1');
    pointer('pointerdown', ring, 100, 100);
    pointer('pointermove', ring, 130, 100);
    pointer('pointerup', ring, 130, 100);
    await painted();
    const [edit] = page.host.edits[0] ?? [];
    expect(edit?.kind === 'place' && edit.x < 0).toBe(true);
  });

  test('a press that hardly moves chooses and moves nothing', async () => {
    const ring = mark('part/ring_1');
    pointer('pointerdown', ring, 100, 100);
    pointer('pointermove', ring, 101, 101);
    pointer('pointerup', ring, 101, 101);
    ring.dispatchEvent(new MouseEvent('click', { bubbles: true }));
    await settle();
    expect(page.host.edits).toHaveLength(0);
    expect(active()).toMatch(/^ring_1\//);
  });

  test('arrow keys move the focused ring in steps, in one gesture for a run of keys', async () => {
    mark('part/ring_1').focus();
    press('ArrowRight');
    press('ArrowRight');
    press('Shift+ArrowUp');
    await new Promise((resolve) => setTimeout(resolve, 700));
    expect(page.host.edits).toEqual([
      [
        {
          kind: 'place',
          row: { table: 'part', id: 'ring_1', occurrence: 0 },
          x: 2,
          y: 8,
        },
      ],
    ]);
    await painted();
    expect(document.querySelector('[data-panel="panel"] .panel-words')?.textContent).toContain(
      '2 mm',
    );
  });

  test('after an edit the picture is asked for once, when typing rests', async () => {
    const before = panelQuestions();
    for (const tilt of [16, 17, 18]) {
      page.host.receive({
        type: 'step-knob',
        knob: { table: 'part', id: 'ring_1', occurrence: 0, column: 'tilt' },
        by: tilt > 0 ? 1 : -1,
      });
    }
    expect(
      document.querySelector('[data-panel="panel"] .panel-pane')?.classList.contains('stale'),
    ).toBe(true);
    await painted();
    expect(panelQuestions()).toBe(before + 1);
    expect(
      document.querySelector('[data-panel="panel"] .panel-pane')?.classList.contains('stale'),
    ).toBe(false);
  });

  test('a picture that cannot be drawn says why', async () => {
    await choose('picture', 'section');
    expect(document.querySelector<HTMLElement>('[data-panel="panel"] .panel-figure')?.hidden).toBe(
      true,
    );
    expect(
      document.querySelector('[data-panel="panel"] .panel-pane .pane-empty')?.textContent,
    ).toBe('Nothing stands on it yet.');
  });

  test('what was chosen is there again when the file is opened again', async () => {
    await choose('picture', 'skin');
    page = await openPage('ready', page.kept());
    await painted();
    const list = document.querySelector<HTMLSelectElement>('[data-choice="picture"]');
    expect(list?.value).toBe('skin');
    expect(document.querySelector('canvas')?.getAttribute('aria-label')).toContain('Arrow keys');
  });

  test('the skin is coloured by height or by stretch, with its legend', async () => {
    await choose('picture', 'skin');
    expect(document.querySelector('.legend')?.textContent).toContain('50 mm');
    await choose('colour', 'stretch');
    expect(document.querySelector('.legend')?.textContent).toContain('20 %');
  });

  test('the picture takes the place of the grid and gives it back', () => {
    const app = (): DOMTokenList | undefined => document.querySelector('.app')?.classList;
    click('[data-action="panel-larger"]');
    expect(app()?.contains('large-picture')).toBe(true);
    click('[data-pane="bill"]');
    expect(app()?.contains('large-picture')).toBe(false);
    click('[data-pane="panel"]');
    click('[data-action="panel-larger"]');
    expect(app()?.contains('large-picture')).toBe(false);
  });

  test('a picture is saved as SVG with the text that the host gives', async () => {
    click('[data-action="save-picture"]');
    await settle();
    const svg = [...document.querySelectorAll<HTMLElement>('dialog [data-value], dialog button')];
    svg.find((one) => one.textContent.startsWith('SVG'))?.click();
    await painted();
    expect(page.host.asked.find((one) => one.type === 'save-picture')).toMatchObject({
      name: 'base-plan',
      format: 'svg',
    });
  });
});
