import type { KnobView } from '../../extension/protocol/views.ts';
import { element, keyedChildren, setHidden, setText } from '../dom.ts';
import { icon } from '../icons.ts';

function knobName(knob: KnobView): string {
  return `${knob.id}/${knob.column}`;
}

/** Pinned cells with a step each way and what one step does. */
export class Knobs {
  readonly root = element('section', {
    class: 'knobs',
    attributes: { 'aria-label': 'Pinned cells', hidden: '' },
  });

  paint(knobs: readonly KnobView[]): void {
    setHidden(this.root, knobs.length === 0);
    keyedChildren(this.root, knobs, {
      key: (knob) => `${knob.table}/${knobName(knob)}`,
      make: makeKnob,
      paint: paintKnob,
    });
  }
}

function stepButton(action: string, sign: string, knob: KnobView): HTMLElement {
  const words = action === 'knob-up' ? 'more' : 'less';
  return element('button', {
    class: 'step',
    text: sign,
    data: { action },
    attributes: { type: 'button', 'aria-label': `${knob.label}: ${knob.step} ${words}` },
  });
}

function makeKnob(knob: KnobView): HTMLElement {
  return element(
    'div',
    {
      class: 'knob',
      data: { knob: knobName(knob), table: knob.table },
      attributes: { role: 'group', 'aria-label': knob.label },
    },
    element('button', {
      class: 'knob-label',
      data: { action: 'knob-go' },
      attributes: { type: 'button' },
    }),
    stepButton('knob-down', '−', knob),
    element('output', { class: 'knob-value' }),
    stepButton('knob-up', '+', knob),
    element('span', { class: 'knob-effect' }),
    element('span', { class: 'knob-check' }),
    element(
      'button',
      {
        class: 'bare',
        title: 'Unpin',
        data: { action: 'knob-unpin' },
        attributes: { type: 'button', 'aria-label': `Unpin ${knob.label}` },
      },
      icon('close'),
    ),
  );
}

function paintKnob(child: HTMLElement, knob: KnobView): void {
  const texts = {
    '.knob-label': knob.label,
    '.knob-value': knob.value,
    '.knob-effect': knob.effect,
    '.knob-check': knob.check,
  };
  for (const [selector, text] of Object.entries(texts)) {
    const part = child.querySelector(selector);
    if (part !== null) setText(part, text);
  }
}
