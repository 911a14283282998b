import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { HeldFocus } from '../../../webview/grid/held-focus.ts';

let entry: HTMLTextAreaElement;
let other: HTMLTextAreaElement;
let held: HeldFocus;

beforeEach(() => {
  entry = document.createElement('textarea');
  other = document.createElement('textarea');
  document.body.replaceChildren(entry, other);
  held = new HeldFocus(entry);
});

afterEach(() => {
  vi.restoreAllMocks();
  document.body.replaceChildren();
});

/** VS Code has the focus outside of the page: in its palette, its explorer. */
function outside(): void {
  vi.spyOn(document, 'hasFocus').mockReturnValue(false);
}

/** The focus comes back to the page: to nothing in it, or to what was clicked. */
function back(to?: HTMLElement): void {
  vi.restoreAllMocks();
  to?.focus();
  window.dispatchEvent(new Event('focus'));
}

/** A repaint takes the entry out of the page and puts it somewhere else. */
function repaint(): void {
  const wish = held.held ? 'keep' : 'leave';
  entry.blur();
  held.wish(wish);
}

test('a repaint keeps the focus in the page that has it', () => {
  held.wish('take');
  repaint();
  expect(document.activeElement).toBe(entry);
});

test('a repaint draws no focus out of a palette; it is there when the page has it again', () => {
  held.wish('take');
  outside();
  repaint();
  repaint();
  expect(document.activeElement).toBe(document.body);
  expect(held.held).toBe(true);
  back();
  expect(document.activeElement).toBe(entry);
});

test('what was clicked meanwhile keeps the focus, and no repaint takes it', () => {
  held.wish('take');
  outside();
  repaint();
  back(other);
  repaint();
  expect(document.activeElement).toBe(other);
  expect(held.held).toBe(false);
});

test('who asks for the grid gets it, wherever the focus is', () => {
  outside();
  held.wish('take');
  expect(document.activeElement).toBe(entry);
});

test('before there is an entry the page holds the focus, and the first sheet takes it', () => {
  outside();
  entry.remove();
  held.take();
  vi.restoreAllMocks();
  document.body.append(entry);
  held.wish('keep');
  expect(document.activeElement).toBe(entry);
});

test('a grid that does not hold the focus leaves it', () => {
  other.focus();
  repaint();
  expect(document.activeElement).toBe(other);
});
