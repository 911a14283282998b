import type { ActualRowView, ActualsView } from '../../extension/protocol/actuals-view.ts';
import { cellKey } from '../addresses.ts';
import { element, keyedChildren, setText } from '../dom.ts';
import { button } from '../form.ts';
import { ActualLine, type ActualHooks } from './actual-line.ts';
import { Asking } from './asking.ts';

const columns = ['Row', 'Estimated', 'Took', 'Difference'];

/** One table of estimates: tasks, or parts that take a material. */
class ActualTable {
  readonly root: HTMLElement;
  readonly #body = element('tbody', { attributes: { role: 'rowgroup' } });
  readonly #lines = new Map<string, ActualLine>();
  readonly #hooks: ActualHooks;

  constructor(title: string, hooks: ActualHooks) {
    this.#hooks = hooks;
    const heads = columns.map((text, index) =>
      element('th', {
        text,
        class: index === 0 ? 'visually-hidden' : index === 3 ? 'number' : '',
        attributes: { scope: 'col', role: 'columnheader' },
      }),
    );
    this.root = element(
      'section',
      { class: 'actual-section', attributes: { 'aria-label': title } },
      element('h2', { text: title }),
      element(
        'table',
        // A name has a line of its own, so the table is laid out as a grid: roles are said again.
        { class: 'actual-table', attributes: { role: 'table', 'aria-label': title } },
        element(
          'thead',
          { attributes: { role: 'rowgroup' } },
          element('tr', { attributes: { role: 'row' } }, ...heads),
        ),
        this.#body,
      ),
    );
  }

  paint(rows: readonly ActualRowView[]): void {
    this.root.hidden = rows.length === 0;
    const keyOf = ({ cell, of }: ActualRowView): string => `${cellKey(cell)} ${of}`;
    keyedChildren(this.#body, rows, {
      key: keyOf,
      make: (row) => {
        const line = new ActualLine(row, this.#hooks, (by) => {
          this.#walk(by);
        });
        this.#lines.set(keyOf(row), line);
        return line.root;
      },
      paint: (_child, row) => {
        this.#lines.get(keyOf(row))?.paint(row);
      },
    });
  }

  // Enter walks down the column; past its last line the keyboard goes back to the grid.
  #walk(by: 1 | -1): void {
    const entries = [...this.root.querySelectorAll('textarea')];
    const at = entries.findIndex((entry) => entry === document.activeElement);
    const next = entries[at + by];
    if (next === undefined) this.#hooks.backToGrid();
    else next.focus();
  }
}

/** Estimate against actual, row by row: what a job took is typed here and stands in its file. */
export class ActualsPane {
  readonly root: HTMLElement;
  readonly #asking: Asking<ActualsView>;
  readonly #message = element('p', { class: 'pane-empty' });
  readonly #said = element('p', { class: 'small' });
  readonly #tasks: ActualTable;
  readonly #timed = element('p', { class: 'actual-timed' });
  readonly #materials: ActualTable;

  constructor(hooks: ActualHooks) {
    this.#tasks = new ActualTable('Time by the clock', hooks);
    this.#materials = new ActualTable('Material', hooks);
    this.root = element(
      'div',
      { class: 'price-pane actuals-pane' },
      element(
        'div',
        { class: 'pane-buttons' },
        button({
          action: 'update-rates',
          text: 'Update rates from actuals…',
          title: 'Proposes rates for the shop book from what its jobs took',
        }),
      ),
      this.#message,
      this.#said,
      this.#tasks.root,
      this.#timed,
      this.#materials.root,
    );
    this.#tasks.root.hidden = true;
    this.#materials.root.hidden = true;
    this.#asking = new Asking({
      root: this.root,
      ask: () => hooks.ask({ ask: 'actuals' }),
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

  #paint(view: ActualsView): void {
    setText(this.#message, view.message);
    this.#message.hidden = view.message === '';
    setText(this.#said, view.said);
    this.#tasks.paint(view.tasks);
    const { timed } = view;
    this.#timed.hidden = timed === undefined;
    if (timed !== undefined) {
      const { label, estimated, actual, difference } = timed;
      setText(this.#timed, `${label}: ${actual} for ${estimated}, ${difference}.`);
    }
    this.#materials.paint(view.materials);
  }
}
