import type { BillGroupView, BillLineView, BillView } from '../../extension/protocol/views.ts';
import { element, keyedChildren, setText } from '../dom.ts';

// Long enough to see which lines an edit moved. A class that comes and goes is painted twice; an
// animation of a background would have the whole page painted in every frame until it ends.
const freshMs = 1600;

/** The live bill: what is bought beside what is charged, group by group. */
export class BillPane {
  readonly root: HTMLElement;
  readonly #table: HTMLTableElement;
  readonly #totals: HTMLElement;
  readonly #note = element('p', { class: 'pane-note' });
  readonly #empty = element('p', {
    class: 'pane-empty',
    text: 'Nothing to buy yet. Rows with a material bring it here.',
  });
  #fade: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    const head = element(
      'thead',
      {},
      element(
        'tr',
        {},
        ...['Material', 'Buy', 'Charge'].map((text, index) =>
          element('th', {
            text,
            class: index === 0 ? '' : 'number',
            attributes: { scope: 'col' },
          }),
        ),
      ),
    );
    this.#totals = element('tfoot');
    this.#table = element(
      'table',
      { class: 'bill', attributes: { 'aria-label': 'Bill of materials' } },
      head,
      this.#totals,
    );
    this.root = element('div', { class: 'bill-pane' }, this.#note, this.#table, this.#empty);
  }

  paint(bill: BillView): void {
    setText(this.#note, bill.note);
    this.#note.hidden = bill.note === '';
    const groups = bill.groups.filter((group) => group.lines.length > 0);
    this.#table.hidden = groups.length === 0;
    this.#empty.hidden = groups.length > 0;
    this.#paintGroups(groups);
    this.#paintTotals(bill);
  }

  #paintGroups(groups: readonly BillGroupView[]): void {
    const bodies = new Map(
      [...this.#table.tBodies].map((body) => [body.dataset['key'] ?? '', body]),
    );
    let before: Element = this.#table.tHead ?? this.#totals;
    for (const group of groups) {
      const body = bodies.get(group.group) ?? element('tbody', { data: { key: group.group } });
      bodies.delete(group.group);
      if (before.nextElementSibling !== body) before.after(body);
      before = body;
      keyedChildren(body, [group, ...group.lines], {
        key: (item) => ('lines' in item ? '' : item.id),
        make: (item) => ('lines' in item ? makeGroup() : makeLine(item)),
        paint: (child, item) => {
          if ('lines' in item) paintGroup(child, item);
          else paintLine(child, item);
        },
      });
    }
    for (const body of bodies.values()) body.remove();
    clearTimeout(this.#fade);
    this.#fade = setTimeout(() => {
      for (const line of this.#table.querySelectorAll('.fresh')) line.classList.remove('fresh');
    }, freshMs);
  }

  #paintTotals(bill: BillView): void {
    const lines = [
      { key: 'total', label: 'Total', buy: bill.buy, charge: bill.charge },
      { key: 'left', label: 'Left over', buy: bill.left, charge: '' },
      { key: 'change', label: 'Since opened', buy: '', charge: bill.change },
    ].filter((line) => line.key === 'total' || line.buy + line.charge !== '');
    keyedChildren(this.#totals, lines, {
      key: (line) => line.key,
      make: (line) =>
        element(
          'tr',
          { class: `bill-${line.key}`, data: { total: line.key } },
          element('th', { text: line.label, attributes: { scope: 'row' } }),
          element('td', { class: 'number' }),
          element('td', { class: 'number' }),
        ),
      paint: (child, line) => {
        const [buy, charge] = child.querySelectorAll('td');
        if (buy !== undefined) setText(buy, line.buy);
        if (charge !== undefined) setText(charge, line.charge);
      },
    });
  }
}

function makeGroup(): HTMLElement {
  return element(
    'tr',
    { class: 'bill-group' },
    element('th', { attributes: { scope: 'rowgroup' } }),
    element('td', { class: 'number' }),
    element('td', { class: 'number' }),
  );
}

function paintGroup(child: HTMLElement, group: BillGroupView): void {
  const [label, buy, charge] = child.children;
  if (label !== undefined) setText(label, group.label);
  if (buy !== undefined) setText(buy, group.buy);
  if (charge !== undefined) setText(charge, group.charge);
}

function makeLine(line: BillLineView): HTMLElement {
  const cell = (name: string): HTMLElement =>
    element(
      'td',
      { class: `number ${name}` },
      element('span', { class: 'main' }),
      element('span', { class: 'small' }),
    );
  return element(
    'tr',
    { class: 'bill-line', data: { line: line.id } },
    element(
      'th',
      { attributes: { scope: 'row' } },
      element('button', {
        class: 'bill-name',
        title: 'Where from',
        data: { action: 'where-from', argument: line.id },
        attributes: { type: 'button' },
      }),
      element('span', { class: 'small' }),
      element('span', { class: 'problem' }),
    ),
    cell('buy'),
    cell('charge'),
  );
}

function paintLine(child: HTMLElement, line: BillLineView): void {
  const [name, need, problem, buy, buyCost, charge, change] =
    child.querySelectorAll('button, span');
  const texts: readonly (readonly [Element | undefined, string])[] = [
    [name, line.name],
    [need, [line.need && `need ${line.need}`, line.note].filter((text) => text !== '').join(' · ')],
    [problem, line.problem],
    [buy, line.buy],
    [buyCost, line.buyCost],
    [charge, line.charge],
    [change, line.change],
  ];
  for (const [part, text] of texts) if (part !== undefined) setText(part, text);
  child.title = line.left === '' ? '' : `${line.left} left over`;
  child.classList.toggle('fresh', line.fresh);
}
