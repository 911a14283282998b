import type { BillGroupView, BillLineView, BillView } from '../../extension/protocol/views.ts';
import { element, keyedChildren, setHidden, setText } from '../dom.ts';

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
    this.#totals = element('tfoot', { attributes: { role: 'rowgroup' } });
    const head = makeHead();
    this.#table = element(
      'table',
      // A name has a line of its own, so the table is laid out as a grid: roles are said again.
      { class: 'bill', attributes: { role: 'table', 'aria-label': 'Bill of materials' } },
      head,
      this.#totals,
    );
    this.root = element('div', { class: 'bill-pane' }, this.#note, this.#table, this.#empty);
  }

  paint(bill: BillView): void {
    setText(this.#note, bill.note);
    setHidden(this.#note, bill.note === '');
    const groups = bill.groups.filter((group) => group.lines.length > 0);
    setHidden(this.#table, groups.length === 0);
    setHidden(this.#empty, groups.length > 0);
    this.#paintGroups(groups);
    this.#paintTotals(bill);
  }

  #paintGroups(groups: readonly BillGroupView[]): void {
    const bodies = new Map(
      [...this.#table.tBodies].map((body) => [body.dataset['key'] ?? '', body]),
    );
    let before: Element = this.#table.tHead ?? this.#totals;
    for (const group of groups) {
      const body = bodies.get(group.group) ?? makeBody(group.group);
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
          { class: `bill-${line.key}`, data: { total: line.key }, attributes: { role: 'row' } },
          element('th', { text: line.label, attributes: { scope: 'row', role: 'rowheader' } }),
          element('td', { class: 'number', attributes: { role: 'cell' } }),
          element('td', { class: 'number', attributes: { role: 'cell' } }),
        ),
      paint: (child, line) => {
        const [buy, charge] = child.querySelectorAll('td');
        if (buy !== undefined) setText(buy, line.buy);
        if (charge !== undefined) setText(charge, line.charge);
      },
    });
  }
}

function makeHead(): HTMLElement {
  const titles = ['Material', 'Need', 'Buy', 'Charge'].map((text, index) => {
    const look = ['visually-hidden', '', 'number', 'number'][index] ?? '';
    return element('th', { text, class: look, attributes: { scope: 'col', role: 'columnheader' } });
  });
  return element(
    'thead',
    { attributes: { role: 'rowgroup' } },
    element('tr', { attributes: { role: 'row' } }, ...titles),
  );
}

function makeBody(group: string): HTMLTableSectionElement {
  return element('tbody', { data: { key: group }, attributes: { role: 'rowgroup' } });
}

function makeGroup(): HTMLElement {
  return element(
    'tr',
    { class: 'bill-group', attributes: { role: 'row' } },
    element('th', { attributes: { scope: 'rowgroup', role: 'rowheader' } }),
    element('td', { class: 'number', attributes: { role: 'cell' } }),
    element('td', { class: 'number', attributes: { role: 'cell' } }),
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
      { class: name, attributes: { role: 'cell' } },
      element('span', { class: 'main' }),
      element('span', { class: 'small' }),
    );
  return element(
    'tr',
    { class: 'bill-line', data: { line: line.id }, attributes: { role: 'row' } },
    element(
      'th',
      { attributes: { scope: 'row', role: 'rowheader' } },
      element('button', {
        class: 'bill-name',
        title: 'Where from',
        data: { action: 'where-from', argument: line.id },
        attributes: { type: 'button' },
      }),
      element('span', { class: 'problem' }),
    ),
    cell('need'),
    cell('number buy'),
    cell('number charge'),
  );
}

function paintLine(child: HTMLElement, line: BillLineView): void {
  const [name, problem, need, note, buy, buyCost, charge, change] =
    child.querySelectorAll('button, span');
  const texts: readonly (readonly [Element | undefined, string])[] = [
    [name, line.name],
    [problem, line.problem],
    [need, line.need],
    [note, line.note],
    [buy, line.buy],
    [buyCost, line.buyCost],
    [charge, line.charge],
    [change, line.change],
  ];
  for (const [part, text] of texts) if (part !== undefined) setText(part, text);
  child.title = line.left === '' ? '' : `${line.left} left over`;
  child.classList.toggle('fresh', line.fresh);
}
