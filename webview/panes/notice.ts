import type { Refusal } from '../edits.ts';
import { element } from '../dom.ts';
import { icon } from '../icons.ts';

/** What was not taken and why; what the person typed is one button away. */
export class Notice {
  readonly root = element('div', {
    class: 'notice',
    data: { notice: '' },
    attributes: { role: 'alert', hidden: '' },
  });
  refusal: Refusal | undefined;

  show(refusal: Refusal): void {
    this.refusal = refusal;
    const { cell, text, message } = refusal;
    const again =
      cell === undefined || text === undefined
        ? undefined
        : element('button', {
            class: 'link',
            text: `Edit “${short(text)}” again`,
            data: { action: 'edit-again' },
            attributes: { type: 'button' },
          });
    this.root.replaceChildren(
      icon('error'),
      element('span', { class: 'notice-words', text: message }),
      ...(again === undefined ? [] : [again]),
      element(
        'button',
        {
          class: 'bare',
          data: { action: 'dismiss-notice' },
          attributes: { type: 'button', 'aria-label': 'Dismiss' },
        },
        icon('close'),
      ),
    );
    this.root.hidden = false;
  }

  hide(): void {
    this.refusal = undefined;
    this.root.hidden = true;
  }
}

function short(text: string): string {
  return text.length > 32 ? `${text.slice(0, 31)}…` : text;
}
