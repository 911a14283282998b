import type { HeadlineFigure, HeadlineView } from '../../extension/protocol/views.ts';
import { element, keyedChildren, setText } from '../dom.ts';
import { icon } from '../icons.ts';

/** The strip at the top: the job's title, its figures and what they leave out. */
export class Headline {
  readonly root: HTMLElement;
  readonly #title = element('h1', { class: 'job-title' });
  readonly #figures = element('dl', { class: 'figures' });
  readonly #notes = element('ul', {
    class: 'headline-notes',
    attributes: { 'aria-label': 'What the figures leave out' },
  });

  constructor() {
    this.root = element(
      'header',
      { class: 'headline' },
      element('div', { class: 'headline-words' }, this.#title, this.#notes),
      this.#figures,
    );
  }

  paint(view: HeadlineView): void {
    setText(this.#title, view.title);
    keyedChildren(this.#figures, view.figures, {
      key: (figure) => figure.key,
      make: makeFigure,
      paint: paintFigure,
    });
    keyedChildren(this.#notes, view.notes, {
      key: (note) => note,
      make: (note) => element('li', { title: note }, icon('note'), element('span', { text: note })),
    });
  }
}

function makeFigure(figure: HeadlineFigure): HTMLElement {
  return element(
    'div',
    { class: 'figure', data: { figure: figure.key } },
    element('dt', { class: 'figure-label' }),
    element(
      'dd',
      {},
      element('span', { class: 'figure-value' }),
      element('span', { class: 'figure-change', title: 'Since the file was opened' }),
    ),
  );
}

function paintFigure(child: HTMLElement, figure: HeadlineFigure): void {
  const [label, value, change] = child.querySelectorAll('dt, dd > span');
  child.dataset['tone'] = figure.tone;
  if (label !== undefined) setText(label, figure.label);
  if (value !== undefined) setText(value, figure.value);
  if (change !== undefined) setText(change, figure.change);
}
