import type { Frame, Locator, Page } from './browser.ts';
import { until } from './workbench.ts';

/** A grid as a person uses it: what it shows, and typing into it. */
export interface Grid {
  readonly frame: Frame;
  readonly chooseSheet: (table: string) => Promise<void>;
  /** Puts the cursor on a cell, scrolling to it as far as needed. */
  readonly goTo: (id: string, column: string) => Promise<void>;
  readonly cell: (id: string, column: string) => Promise<string>;
  /** Types over a cell and presses Enter. */
  readonly typeCell: (id: string, column: string, text: string) => Promise<void>;
  /** What the row card shows for a field of the row under the cursor. */
  readonly field: (key: string) => Promise<string>;
  /** Types into a field of the row card and finishes with Enter; `pause` lies between the keys, in ms. */
  readonly typeField: (key: string, text: string, pause?: number) => Promise<void>;
  readonly figure: (key: string) => Promise<string>;
  readonly figures: () => Promise<Readonly<Record<string, string>>>;
  /** Lines of the bill as texts, by id. */
  readonly bill: () => Promise<Readonly<Record<string, string>>>;
  /** Waits until something shown is no longer what it was. */
  readonly changed: (what: string, ask: () => Promise<string>, before: string) => Promise<string>;
}

/** Runs in the page: texts of all elements with an attribute, by its value. */
function textsBy([attribute, selector]: readonly [string, string]): Record<string, string> {
  const texts: Record<string, string> = {};
  for (const element of document.querySelectorAll<HTMLElement>(`[${attribute}]`)) {
    const part = selector === '' ? element : element.querySelector<HTMLElement>(selector);
    texts[element.getAttribute(attribute) ?? ''] = (part?.innerText ?? '').trim();
  }
  return texts;
}

/** Runs in the page: scrolls the grid on by most of its height; false at its end. */
function scrollOn(fromTop: boolean): boolean {
  const grid = document.querySelector<HTMLElement>('[data-grid]');
  const scroller = [
    grid,
    ...(grid?.querySelectorAll<HTMLElement>('*') ?? []),
    grid?.parentElement,
  ].find(
    (one) =>
      one instanceof HTMLElement &&
      one.scrollHeight > one.clientHeight + 1 &&
      one.clientHeight > 60,
  );
  if (!(scroller instanceof HTMLElement)) return false;
  const before = scroller.scrollTop;
  scroller.scrollTop = fromTop ? 0 : before + scroller.clientHeight * 0.6;
  return fromTop || scroller.scrollTop > before;
}

async function visibleCell(frame: Frame, name: string): Promise<Locator> {
  const cell = frame.locator(`[data-cell="${name}"]`).first();
  if ((await cell.count()) > 0) return cell;
  for (let further = await frame.evaluate(scrollOn, true); further;) {
    // Rows come with the next frame.
    await new Promise((resolve) => setTimeout(resolve, 100));
    if ((await cell.count()) > 0) return cell;
    further = await frame.evaluate(scrollOn, false);
  }
  await cell.waitFor({ state: 'attached', timeout: 5000 });
  return cell;
}

export function gridIn(page: Page, frame: Frame): Grid {
  const field = (key: string): Locator => frame.locator(`[data-field="${key}"]`).first();
  const goTo = async (id: string, column: string): Promise<void> => {
    await (await visibleCell(frame, `${id}/${column}`)).click();
  };
  return {
    frame,
    goTo,
    async chooseSheet(table) {
      await frame.locator(`[data-sheet="${table}"]`).click();
      await frame.locator(`[data-sheet="${table}"][aria-selected="true"]`).waitFor();
    },
    async cell(id, column) {
      const cell = await visibleCell(frame, `${id}/${column}`);
      return cell.evaluate((one) => one.firstChild?.textContent ?? '');
    },
    async typeCell(id, column, text) {
      await goTo(id, column);
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    },
    field: async (key) => (await field(key).getAttribute('data-shown')) ?? '',
    async typeField(key, text, pause = 0) {
      const entry = field(key).locator('input, textarea').first();
      await entry.click();
      await page.keyboard.press('Control+a');
      await page.keyboard.type(text, { delay: pause });
      if (pause > 0) await page.waitForTimeout(pause);
      await page.keyboard.press('Enter');
    },
    figure: async (key) => frame.locator(`[data-figure="${key}"] .figure-value`).innerText(),
    figures: async () => frame.evaluate(textsBy, ['data-figure', '.figure-value'] as const),
    bill: async () => frame.evaluate(textsBy, ['data-line', ''] as const),
    changed: async (what, ask, before) =>
      until(`${what} to change from ${before}`, async () => {
        const now = await ask();
        return now !== before && now !== '' ? now : undefined;
      }),
  };
}
