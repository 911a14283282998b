import type { CheckView } from '../../extension/protocol/check-view.ts';
import { element, keyedChildren, setHidden, setText } from '../dom.ts';
import { icon, type IconName } from '../icons.ts';

const icons: Readonly<Record<CheckView['outcome'], IconName>> = {
  pass: 'pass',
  near: 'near',
  fail: 'error',
  decide: 'why',
  'no-answer': 'open',
};

export function checkKey({ id, occurrence, outcome, tone }: CheckView): string {
  return [id, String(occurrence), outcome, tone].join(' ');
}

/** One check: its outcome as picture and word, its sentence; a click goes to its row. */
export function checkLine(check: CheckView): HTMLElement {
  const picture = check.outcome === 'fail' && check.tone === 'warning' ? 'warning' : undefined;
  return element(
    'li',
    { class: 'check-line', data: { outcome: check.outcome, tone: check.tone } },
    element(
      'button',
      {
        class: 'problem-go',
        data: {
          action: 'go-check',
          argument: check.id,
          occurrence: String(check.occurrence),
        },
        attributes: { type: 'button' },
      },
      icon(picture ?? icons[check.outcome]),
      element(
        'span',
        { class: 'problem-words' },
        element('span', { class: 'check-message' }),
        element('span', { class: 'small check-word' }),
      ),
    ),
  );
}

export function paintCheck(line: HTMLElement, check: CheckView): void {
  const message = line.querySelector('.check-message');
  const word = line.querySelector('.check-word');
  if (message !== null) setText(message, check.message);
  if (word !== null) setText(word, check.word);
}

/** The checks of the job, the worst first. */
export class ChecksPane {
  readonly root: HTMLElement;
  readonly #list = element('ul', { class: 'problems', attributes: { 'aria-label': 'Checks' } });
  readonly #empty = element('p', {
    class: 'pane-empty',
    text: 'No checks yet. Insert the kit “Usual checks”, or a row on the sheet Checks.',
  });

  constructor() {
    this.root = element('div', { class: 'checks-pane' }, this.#list, this.#empty);
  }

  paint(checks: readonly CheckView[]): void {
    setHidden(this.#empty, checks.length > 0);
    setHidden(this.#list, checks.length === 0);
    keyedChildren(this.#list, checks, { key: checkKey, make: checkLine, paint: paintCheck });
  }
}
