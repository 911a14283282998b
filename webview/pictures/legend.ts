import type { SkinScale } from '../../extension/protocol/panel-view.ts';
import { element } from '../dom.ts';

/** What the colours of a skin mean: a bar from the least to the most, with figures under it. */
export function legend(scale: SkinScale): HTMLElement {
  return element(
    'div',
    { class: 'legend' },
    element('span', { class: 'legend-label', text: scale.label }),
    element('span', { class: 'legend-bar', attributes: { 'aria-hidden': 'true' } }),
    element(
      'span',
      { class: 'legend-ticks' },
      ...scale.ticks.map((text) => element('span', { text })),
    ),
  );
}
