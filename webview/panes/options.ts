import type {
  OptionCellView,
  OptionFigureView,
  OptionsView,
  OptionView,
} from '../../extension/protocol/options-view.ts';
import { rowKey } from '../addresses.ts';
import { element, setText } from '../dom.ts';
import { button } from '../form.ts';
import type { Ask } from '../suggest/suggester.ts';
import { Asking } from './asking.ts';
import { goButton } from './lines.ts';

/** Each option works the whole job out once more: not while somebody types. */
const restMs = 600;

function heading(text: string): HTMLElement {
  return element('th', { text, attributes: { scope: 'col' } });
}

function figureRow({ label, now, then }: OptionFigureView): HTMLElement {
  return element(
    'tr',
    {},
    element('th', { text: label, attributes: { scope: 'row' } }),
    element('td', { text: now }),
    ...then.map(({ text, change }) =>
      element(
        'td',
        {},
        element('span', { text }),
        element('span', { class: 'small', text: change === 'no change' ? '' : change }),
      ),
    ),
  );
}

function figureTable({ figures, options }: OptionsView): HTMLElement {
  return element(
    'table',
    { class: 'option-figures', attributes: { 'aria-label': 'Options side by side' } },
    element(
      'thead',
      {},
      element(
        'tr',
        {},
        element('td'),
        heading('As it is'),
        ...options.map(({ name }) => heading(name)),
      ),
    ),
    element('tbody', {}, ...figures.map(figureRow)),
  );
}

function cellLine({ cell, name, now, then }: OptionCellView): HTMLElement {
  const go = element('button', {
    class: 'price-name',
    text: name,
    data: {
      action: 'go-row',
      table: cell.table,
      argument: cell.id,
      occurrence: String(cell.occurrence),
      column: cell.column,
    },
    attributes: { type: 'button' },
  });
  return element(
    'li',
    { class: 'option-cell' },
    go,
    element('span', { class: 'option-now', text: now === '' ? '(blank)' : now }),
    element('span', { class: 'option-then', text: `→ ${then === '' ? '(blank)' : then}` }),
  );
}

function optionSection(option: OptionView): HTMLElement {
  const { id, occurrence, name, note, problem, cells } = option;
  const go = goButton('option', id, occurrence);
  setText(go, name);
  return element(
    'section',
    { class: 'option', data: { option: rowKey(option) }, attributes: { 'aria-label': name } },
    element(
      'div',
      { class: 'option-head' },
      element('h3', {}, go),
      button({
        action: 'accept-option',
        argument: rowKey(option),
        text: 'Accept',
        title: `Makes “${name}” the job; Undo takes it back`,
      }),
    ),
    note === '' ? undefined : element('p', { class: 'small', text: note }),
    problem === '' ? undefined : element('p', { class: 'option-problem', text: problem }),
    element(
      'ul',
      { class: 'option-cells', attributes: { 'aria-label': 'What it sets' } },
      ...cells.map(cellLine),
    ),
  );
}

/** Named alternatives side by side: what each sets, what the job then comes to, and a way to take one. */
export class OptionsPane {
  readonly root: HTMLElement;
  readonly #asking: Asking<OptionsView>;
  readonly #message = element('p', {
    class: 'pane-empty',
    text: 'Working out what the job comes to with each option…',
  });
  readonly #figures = element('div', {
    class: 'option-table',
    attributes: { role: 'region', tabindex: '0', 'aria-label': 'Options side by side' },
  });
  readonly #note = element('p', { class: 'small' });
  readonly #options = element('div', { class: 'options' });

  constructor(ask: Ask) {
    this.root = element(
      'div',
      { class: 'price-pane options-pane' },
      element(
        'div',
        { class: 'pane-buttons' },
        button({
          action: 'add-option',
          text: 'Add option from cell…',
          title: 'Says the cell under the cursor otherwise, in a new option or in one there is',
        }),
      ),
      this.#message,
      this.#figures,
      this.#note,
      this.#options,
    );
    this.#figures.hidden = true;
    this.#asking = new Asking({
      root: this.root,
      ask: () => ask({ ask: 'options' }),
      paint: (view) => {
        this.#paint(view);
      },
      restMs,
    });
  }

  seen(seen: boolean): void {
    this.#asking.seen(seen);
  }

  stale(): void {
    this.#asking.stale();
  }

  #paint(view: OptionsView): void {
    setText(this.#message, view.message);
    this.#message.hidden = view.message === '';
    this.#figures.hidden = view.options.length === 0;
    setText(this.#note, view.note);
    // Made anew only where it differs, so that a button keeps the focus while other figures move.
    const shows = JSON.stringify(view);
    if (this.root.dataset['shows'] === shows) return;
    this.root.dataset['shows'] = shows;
    this.#figures.replaceChildren(figureTable(view));
    this.#options.replaceChildren(...view.options.map(optionSection));
  }
}
