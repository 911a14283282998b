import type { CardField, CardView } from '../../extension/protocol/views.ts';
import { cellAddress, rowKey, sameRow } from '../addresses.ts';
import { element, keyedChildren, setHidden, setText } from '../dom.ts';
import { icon } from '../icons.ts';
import type { Popup } from '../suggest/popup.ts';
import type { Ask, EntryTarget } from '../suggest/suggester.ts';
import { CardLine, paintResult, resultLine, type FieldHooks } from './card-field.ts';
import { checkKey, checkLine, paintCheck } from './checks.ts';
import { fixButtons, problemKey } from './problems.ts';

export interface CardHooks {
  readonly editable: () => boolean;
  readonly commit: (target: EntryTarget, text: string) => void;
  /** Does something once what was committed is painted. */
  readonly afterwards: (run: () => void) => void;
  readonly backToGrid: () => void;
}

/** The row card: everything about the row under the cursor, by label, to read and to edit. */
export class CardPane {
  readonly root: HTMLElement;
  view: CardView | undefined;
  readonly #hooks: CardHooks;
  readonly #parts: { readonly popup: Popup; readonly ask: Ask };
  readonly #lines = new Map<string, CardLine>();
  readonly #title = element('h2', { class: 'card-title' });
  readonly #kind = element('span', { class: 'card-kind' });
  readonly #help = element('p', { class: 'card-help' });
  readonly #problems = element('ul', { class: 'problems' });
  readonly #checks = checkList('Checks');
  readonly #passed = checkList('Checks passed');
  readonly #fields = element('div', { class: 'fields' });
  readonly #results = element('dl', { class: 'fields results' });
  readonly #draws = element('div', { class: 'draws' });
  readonly #more = element('div', { class: 'card-more' });
  readonly #body: HTMLElement;
  readonly #empty = element('p', {
    class: 'pane-empty',
    text: 'Choose a row to see all about it.',
  });

  constructor(hooks: CardHooks, parts: { readonly popup: Popup; readonly ask: Ask }) {
    this.#hooks = hooks;
    this.#parts = parts;
    this.#body = element(
      'div',
      { class: 'card-body', attributes: { hidden: '' } },
      element('div', { class: 'card-head' }, this.#title, this.#kind),
      this.#help,
      this.#problems,
      this.#checks,
      this.#fields,
      this.#results,
      this.#passed,
      this.#draws,
      this.#more,
    );
    this.root = element('div', { class: 'card', data: { card: '' } }, this.#body, this.#empty);
  }

  paint(view: CardView | undefined): void {
    if (!sameRow(this.view, view)) this.#forget();
    this.view = view;
    setHidden(this.#body, view === undefined);
    setHidden(this.#empty, view !== undefined);
    if (view === undefined) return;
    this.root.dataset['card'] = rowKey(view);
    setText(this.#title, view.title);
    setText(this.#kind, view.kind);
    setHidden(this.#kind, view.kind === '');
    setText(this.#help, view.kindHelp);
    setHidden(this.#help, view.kindHelp === '');
    this.#paintProblems(view);
    this.#paintChecks(view);
    this.#paintFields(this.#fields, view.fields, 'card');
    this.#paintResults(view.results);
    this.#paintDraws(view);
    this.#paintMore(view);
  }

  /** What was typed was not taken: its fields show what the row holds. */
  restore(): void {
    this.paint(this.view);
  }

  /** Puts the keyboard on the first field that takes typing. */
  focusFirst(): boolean {
    const entry = this.#entries()[0];
    entry?.focus();
    return entry !== undefined;
  }

  #forget(): void {
    this.#lines.clear();
    this.#fields.replaceChildren();
    this.#draws.replaceChildren();
  }

  #entries(): readonly HTMLTextAreaElement[] {
    const all = this.#body.querySelectorAll<HTMLTextAreaElement>('textarea.field-entry');
    return [...all].filter((entry) => !entry.readOnly);
  }

  #fieldHooks(): FieldHooks {
    return {
      target: (field) => this.#target(field),
      commit: (target, text, end) => {
        this.#hooks.commit(target, text);
        if (end !== 'enter' && end !== 'shift-enter') return;
        this.#hooks.afterwards(() => {
          this.#walk(end === 'enter' ? 1 : -1);
        });
      },
      cancelled: this.#hooks.backToGrid,
    };
  }

  // Enter walks the card; past its last field the keyboard goes back to the grid.
  #walk(by: 1 | -1): void {
    const entries = this.#entries();
    const at = entries.findIndex((entry) => entry === document.activeElement);
    const next = entries[at + by];
    if (next === undefined) this.#hooks.backToGrid();
    else next.focus();
  }

  #target(field: CardField): EntryTarget | undefined {
    const { view } = this;
    if (view === undefined || field.editor === 'none' || !this.#hooks.editable()) return undefined;
    return { cell: cellAddress(view.table, rowKey(view), field.key), editor: field.editor };
  }

  #paintFields(parent: HTMLElement, fields: readonly CardField[], prefix: string): void {
    keyedChildren(parent, fields, {
      key: (field) => field.key,
      make: (field) => {
        const line = new CardLine(field, this.#fieldHooks(), { ...this.#parts, prefix });
        this.#lines.set(field.key, line);
        return line.root;
      },
      paint: (_child, field) => {
        this.#lines.get(field.key)?.paint(field);
      },
    });
  }

  #paintResults(results: readonly CardField[]): void {
    setHidden(this.#results, results.length === 0);
    keyedChildren(this.#results, results, {
      key: (field) => field.key,
      make: resultLine,
      paint: paintResult,
    });
  }

  #paintProblems(view: CardView): void {
    setHidden(this.#problems, view.problems.length === 0);
    const indexed = view.problems.map((problem, index) => ({ problem, index }));
    keyedChildren(this.#problems, indexed, {
      key: ({ problem, index }) => `${String(index)}\u001f${problemKey(problem)}`,
      make: ({ problem, index }) =>
        element(
          'li',
          { class: 'problem', data: { severity: problem.severity } },
          icon(problem.severity),
          element('span', { class: 'problem-message', text: problem.message }),
          element('span', { class: 'fixes' }, ...fixButtons(problem, index)),
        ),
    });
  }

  #paintChecks({ checks }: CardView): void {
    // What passes is good to know; what does not stands before all that can be typed.
    const passed = checks.filter(({ outcome }) => outcome === 'pass');
    const others = checks.filter(({ outcome }) => outcome !== 'pass');
    for (const [list, lines] of [
      [this.#checks, others],
      [this.#passed, passed],
    ] as const) {
      setHidden(list, lines.length === 0);
      keyedChildren(list, lines, { key: checkKey, make: checkLine, paint: paintCheck });
    }
  }

  #paintDraws(view: CardView): void {
    keyedChildren(this.#draws, view.draws, {
      key: (draw) => draw.name,
      make: (draw) =>
        element(
          'section',
          { class: 'draw', data: { draw: draw.name } },
          element('h3', { text: draw.label }),
          element('div', { class: 'fields' }),
        ),
      paint: (child, draw) => {
        const fields = child.querySelector<HTMLElement>('.fields');
        if (fields !== null) this.#paintFields(fields, draw.fields, `draw-${draw.name}`);
      },
    });
  }

  #paintMore(view: CardView): void {
    const amounts = view.amounts.map((amount) => section(amount.label, amount.value, amount.steps));
    const lists = [
      { title: 'Steps', lines: view.steps },
      { title: 'Cautions', lines: view.cautions },
    ].filter(({ lines }) => lines.length > 0);
    const key = JSON.stringify([view.amounts, view.steps, view.cautions]);
    if (this.#more.dataset['shows'] === key) return;
    this.#more.dataset['shows'] = key;
    const open = new Set(
      [...this.#more.querySelectorAll('details[open] .amount-label')].map((one) => one.textContent),
    );
    this.#more.replaceChildren(
      ...(amounts.length === 0 ? [] : [element('h3', { text: 'Amounts' })]),
      ...amounts,
      ...lists.map(({ title, lines }) => section(title, '', lines)),
    );
    for (const details of this.#more.querySelectorAll('details'))
      details.open = open.has(details.querySelector('.amount-label')?.textContent ?? '');
  }
}

function checkList(label: string): HTMLElement {
  return element('ul', { class: 'problems checks', attributes: { 'aria-label': label } });
}

function section(label: string, value: string, lines: readonly string[]): HTMLElement {
  return element(
    'details',
    { class: 'amount' },
    element(
      'summary',
      {},
      element('span', { class: 'amount-label', text: label }),
      element('span', { class: 'amount-value', text: value }),
    ),
    element('ol', {}, ...lines.map((text) => element('li', { text }))),
  );
}
