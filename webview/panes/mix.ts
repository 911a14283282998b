import type { MeasureView, MixCoatView, MixView } from '../../extension/protocol/mix-view.ts';
import { element, keyedChildren, setText } from '../dom.ts';
import { button } from '../form.ts';
import type { Ask } from '../suggest/suggester.ts';
import { Asking } from './asking.ts';
import { goButton, paintCells, paintFacts, paintNotes, twoCells } from './lines.ts';

function makeCoat({ id, occurrence, name }: MixCoatView): HTMLElement {
  const heading = element('h3', {}, goButton('part', id, occurrence), element('span'));
  return element(
    'section',
    { class: 'mix-coat', attributes: { 'aria-label': name } },
    heading,
    element('div', { class: 'mix-amounts' }),
    element('ul', { class: 'price-list' }),
    element('p', { class: 'small mix-exactly' }),
    element('p', { class: 'mix-life' }),
    element('ul', { class: 'mix-warnings' }),
  );
}

function makeAmount(): HTMLElement {
  return element(
    'div',
    { class: 'mix-amount' },
    element('span', { class: 'small' }),
    element('strong'),
    element('span', { class: 'small' }),
  );
}

function makeMeasure(): HTMLElement {
  return element(
    'li',
    { class: 'price-line' },
    element(
      'div',
      { class: 'price-words' },
      element('span', { class: 'price-name' }),
      element('span', { class: 'small' }),
    ),
    element('span', { class: 'number' }),
  );
}

function textsInto(parent: Element, selector: string, texts: readonly string[]): void {
  const found = parent.querySelectorAll(selector);
  texts.forEach((text, index) => {
    const one = found[index];
    if (one !== undefined) setText(one, text);
  });
}

function listOf(parent: Element, selector: string): HTMLElement {
  const found = parent.querySelector<HTMLElement>(selector);
  if (found === null) throw new Error(`A coat without ${selector}.`);
  return found;
}

function paintMeasures(list: HTMLElement, measures: readonly MeasureView[]): void {
  keyedChildren(list, measures, {
    key: ({ key }) => key,
    make: makeMeasure,
    paint: (line, { amount, makes, error }) => {
      paintCells(line, [amount, makes, error]);
    },
  });
}

function paintCoat(child: HTMLElement, coat: MixCoatView): void {
  textsInto(child, 'h3 > *', [coat.name, coat.pots]);
  keyedChildren(listOf(child, '.mix-amounts'), coat.amounts, {
    key: ({ key }) => key,
    make: makeAmount,
    paint: (cell, { what, much, also }) => {
      textsInto(cell, ':scope > *', [what, much, also]);
    },
  });
  paintMeasures(listOf(child, '.price-list'), coat.measures);
  textsInto(child, '.mix-exactly, .mix-life', [coat.exactly, coat.life]);
  paintNotes(listOf(child, '.mix-warnings'), coat.warnings);
}

/** The mix plan: each coat's pots, what to weigh and measure, how it rounds, how long it lasts. */
export class MixPane {
  readonly root: HTMLElement;
  readonly #asking: Asking<MixView>;
  readonly #facts = element('dl', { class: 'price-facts' });
  readonly #message = element('p', { class: 'pane-empty' });
  readonly #coats = element('div', { class: 'mix-coats' });
  readonly #open = element('ul', { class: 'price-list' });
  readonly #total = element('p', { class: 'mix-total' });
  readonly #caution = element('p', { class: 'small' });
  readonly #test: HTMLElement;

  constructor(ask: Ask) {
    this.#test = button({
      action: 'insert-kit',
      argument: 'gel_test',
      text: 'Enter gel test…',
      title: 'Writes what a cup of this resin did in this shop into the job’s constants',
    });
    this.root = element(
      'div',
      { class: 'price-pane mix-pane' },
      element('div', { class: 'pane-buttons' }, this.#test),
      this.#facts,
      this.#message,
      this.#coats,
      this.#open,
      this.#total,
      this.#caution,
    );
    this.#asking = new Asking({
      root: this.root,
      ask: () => ask({ ask: 'mix' }),
      paint: (view) => {
        this.#paint(view);
      },
    });
  }

  seen(seen: boolean): void {
    this.#asking.seen(seen);
  }

  stale(): void {
    this.#asking.stale();
  }

  #paint(view: MixView): void {
    paintFacts(this.#facts, view.facts);
    setText(this.#message, view.message);
    this.#message.hidden = view.message === '';
    // A test that is there is changed in its cells: a second would stand beside it.
    this.#test.hidden = view.anchored;
    keyedChildren(this.#coats, view.coats, {
      key: ({ id, occurrence }) => `${id}#${String(occurrence)}`,
      make: makeCoat,
      paint: paintCoat,
    });
    keyedChildren(this.#open, view.open, {
      key: ({ id }) => id,
      make: ({ id, occurrence }) => twoCells(goButton('part', id, occurrence)),
      paint: (line, { name, why }) => {
        paintCells(line, [name, `Not planned: ${why}`, '']);
      },
    });
    setText(this.#total, view.total);
    setText(this.#caution, view.message === '' ? view.caution : '');
  }
}
