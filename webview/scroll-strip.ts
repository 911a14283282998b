import { element, setHidden } from './dom.ts';
import { icon } from './icons.ts';

/** Share of what is seen that a click on a hint scrolls by. */
const stride = 0.8;

function hint(side: 'back' | 'on', title: string): HTMLElement {
  // The keyboard goes along the strip's own controls, which scroll into sight by themselves.
  return element(
    'button',
    {
      class: `strip-hint ${side}`,
      title,
      attributes: { type: 'button', tabindex: '-1', 'aria-hidden': 'true', hidden: '' },
    },
    icon(side),
  );
}

/** One line that scrolls sideways, with an arrow at each end where there is more to see. */
export function scrollStrip(
  inner: HTMLElement,
  words: { readonly back: string; readonly on: string },
): HTMLElement {
  const back = hint('back', words.back);
  const on = hint('on', words.on);
  const scroller = element('div', { class: 'strip-scroller' }, inner);
  const update = (): void => {
    const { scrollLeft, scrollWidth, clientWidth } = scroller;
    setHidden(back, scrollLeft < 1);
    setHidden(on, scrollLeft > scrollWidth - clientWidth - 1);
  };
  back.addEventListener('click', () => {
    scroller.scrollBy({ left: -scroller.clientWidth * stride, behavior: 'smooth' });
  });
  on.addEventListener('click', () => {
    scroller.scrollBy({ left: scroller.clientWidth * stride, behavior: 'smooth' });
  });
  scroller.addEventListener('scroll', update, { passive: true });
  scroller.addEventListener(
    'wheel',
    (event) => {
      if (event.deltaX === 0 && !event.ctrlKey) scroller.scrollLeft += event.deltaY;
    },
    { passive: true },
  );
  if (typeof ResizeObserver !== 'undefined') {
    // Told after layout, so that looking at the widths costs none.
    const observer = new ResizeObserver(update);
    observer.observe(scroller);
    observer.observe(inner);
  }
  return element('div', { class: 'strip' }, back, scroller, on);
}
