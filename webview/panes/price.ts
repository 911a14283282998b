import type {
  HoursPhase,
  HoursTask,
  MoneyView,
  PriceLine,
} from '../../extension/protocol/price-view.ts';
import type { CellAddress } from '../../extension/protocol/messages.ts';
import type { Ask } from '../suggest/suggester.ts';
import { CostDrivers } from './cost-drivers.ts';
import { Asking } from './asking.ts';
import { element, keyedChildren, setText } from '../dom.ts';
import { button } from '../form.ts';
import { goButton, paintCells, paintFacts, paintNotes, twoCells } from './lines.ts';

function makeLine({ table, id, look, key }: PriceLine): HTMLElement {
  const line = twoCells(goButton(table, id, Number(key.slice(key.indexOf('#') + 1)) || 0));
  line.classList.add(`price-${look}`);
  return line;
}

function makeTask({ id, occurrence }: HoursTask): HTMLElement {
  return twoCells(goButton('task', id, occurrence));
}

function makePhase(phase: HoursPhase): HTMLElement {
  return element(
    'section',
    { class: 'hours-phase', attributes: { 'aria-label': phase.label } },
    element(
      'h3',
      {},
      element('span', { class: 'hours-label' }),
      element('span', { class: 'number' }),
    ),
    element('ul', { class: 'price-list' }),
  );
}

function paintPhase(child: HTMLElement, phase: HoursPhase): void {
  const [label, time] = child.querySelectorAll('h3 > span');
  if (label !== undefined) setText(label, phase.label);
  const waits = phase.waiting === '' ? '' : `, ${phase.waiting}`;
  if (time !== undefined) setText(time, `${phase.working}${waits}`);
  const list = child.querySelector('ul');
  if (list === null) return;
  keyedChildren(list, phase.tasks, {
    key: ({ id, occurrence }) => `${id}#${String(occurrence)}`,
    make: makeTask,
    paint: (line, task) => {
      const note = task.complete ? task.how : task.note;
      paintCells(line, [task.name, note, task.time]);
      line.title = task.note;
      line.classList.toggle('price-open', !task.complete);
    },
  });
}

/** The price from materials to balance, what it means, and the hours behind it. */
export class PricePane {
  readonly root: HTMLElement;
  readonly #notes = element('ul', { class: 'pane-notes' });
  readonly #lines = element('ul', { class: 'price-list', attributes: { 'aria-label': 'Price' } });
  readonly #facts = element('dl', { class: 'price-facts' });
  readonly #total = element('span', { class: 'number' });
  readonly #hoursNotes = element('ul', { class: 'pane-notes' });
  readonly #phases = element('div', { class: 'hours-phases' });
  readonly #people = element('dl', { class: 'price-facts' });

  readonly #drivers: CostDrivers;
  readonly #asking: Asking<MoneyView>;

  constructor(ask: Ask, goTo: (cell: CellAddress) => void) {
    this.#drivers = new CostDrivers(ask, goTo);
    this.root = element(
      'div',
      { class: 'price-pane' },
      element(
        'div',
        { class: 'pane-buttons' },
        button({ action: 'preview-paper', text: 'Preview paper…' }),
        button({ action: 'write-paper', text: 'Write paper…' }),
      ),
      this.#notes,
      this.#lines,
      this.#facts,
      this.#drivers.root,
      element('h2', {}, element('span', { text: 'Hours' }), this.#total),
      this.#hoursNotes,
      this.#phases,
      this.#people,
    );
    this.#asking = new Asking({
      root: this.root,
      ask: () => ask({ ask: 'price' }),
      paint: (view) => {
        this.#paint(view);
      },
      restMs: 0,
    });
  }

  seen(seen: boolean): void {
    this.#asking.seen(seen);
  }

  stale(): void {
    this.#drivers.stale();
    this.#asking.stale();
  }

  #paint({ price, hours }: MoneyView): void {
    paintNotes(this.#notes, price.notes);
    keyedChildren(this.#lines, price.lines, {
      // A line that begins to lead somewhere is another line.
      key: ({ key, look, id }) => `${key} ${look} ${id}`,
      make: makeLine,
      paint: (line, { label, detail, amount, look }) => {
        const change =
          look === 'total' && price.change !== '' ? `${price.change} since opened` : '';
        paintCells(line, [label, detail === '' ? change : detail, amount]);
      },
    });
    paintFacts(this.#facts, price.facts);
    setText(this.#total, hours.total);
    paintNotes(this.#hoursNotes, hours.notes);
    keyedChildren(this.#phases, hours.phases, {
      key: ({ key }) => key,
      make: makePhase,
      paint: paintPhase,
    });
    paintFacts(
      this.#people,
      hours.people.map(({ key, label, working }) => ({ key, label, value: working })),
    );
  }
}
