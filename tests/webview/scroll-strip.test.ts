import { describe, expect, test } from 'vitest';
import { scrollStrip } from '../../webview/scroll-strip.ts';

/** A strip 100 px wide whose content is as wide as told. */
function strip(width: number) {
  const root = scrollStrip(document.createElement('div'), { back: 'Before', on: 'More' });
  const scroller = root.querySelector<HTMLElement>('.strip-scroller');
  if (scroller === null) throw new Error('The strip has nothing that scrolls.');
  Object.defineProperty(scroller, 'clientWidth', { value: 100 });
  Object.defineProperty(scroller, 'scrollWidth', { value: width });
  const shown = (at: number): readonly boolean[] => {
    scroller.scrollLeft = at;
    scroller.dispatchEvent(new Event('scroll'));
    return [...root.querySelectorAll<HTMLElement>('.strip-hint')].map(({ hidden }) => !hidden);
  };
  return { root, scroller, shown };
}

describe('scrollStrip', () => {
  test('an arrow stands at each end where there is more to see', () => {
    const { shown } = strip(250);
    expect(shown(0)).toEqual([false, true]);
    expect(shown(60)).toEqual([true, true]);
    expect(shown(150)).toEqual([true, false]);
    expect(strip(100).shown(0)).toEqual([false, false]);
  });

  test('arrows are for the mouse: the keyboard goes along the controls themselves', () => {
    for (const arrow of strip(250).root.querySelectorAll('button')) {
      expect(arrow.tabIndex).toBe(-1);
      expect(arrow.getAttribute('aria-hidden')).toBe('true');
    }
  });

  test('the wheel scrolls sideways', () => {
    const { scroller } = strip(250);
    scroller.dispatchEvent(new WheelEvent('wheel', { deltaY: 40 }));
    expect(scroller.scrollLeft).toBe(40);
  });
});
