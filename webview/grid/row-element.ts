import type { CellMark } from '../../extension/protocol/compare-view.ts';
import type { CellView, ColumnView, RowView } from '../../extension/protocol/views.ts';
import { idColumn } from '../addresses.ts';
import { element, setAttribute } from '../dom.ts';
import { headerHeight, rowHeight } from './geometry.ts';
import { contains, type Rectangle, type Spot } from './selection.ts';

/** What one row shows now. */
export interface RowContent {
  readonly key: string;
  readonly table: string;
  readonly row: RowView | undefined;
  readonly editable: boolean;
  /** A cell of it shows what was typed and not yet answered. */
  readonly echoed: boolean;
  /** Its cells; asked for only where the row has changed. */
  readonly views: () => readonly CellView[];
}

/** Puts a line in its place: by `top`, as each transform would be a layer of its own to composite. */
export function placeLine(root: HTMLElement, line: number): void {
  const top = headerHeight + line * rowHeight;
  root.style.setProperty('top', `${String(top)}px`);
  // Header and titles are row 1.
  setAttribute(root, 'aria-rowindex', String(line + 2));
}

/** Sets the custom property of CSS that holds a column's width. */
export function widthProperty(column: number): string {
  return `--w${String(column)}`;
}

function cellClass(view: CellView, column: ColumnView): string {
  const trouble = view.severity === '' ? '' : ` trouble ${view.severity}`;
  const formula = view.formula ? ' formula' : '';
  const picker = column.editor === 'choice' || column.editor === 'link' ? ' pickable' : '';
  return `cell ${view.look} ${column.align}${formula}${picker}${trouble}`;
}

/** Letters that find room in a column, by its number in the sheet; that of the row header is -1. */
export type Room = (column: number) => number;

/** Shows how a cell differs from another version, to the eye and to screen readers. */
function paintMark(cell: HTMLElement, mark: CellMark | undefined): void {
  setAttribute(cell, 'data-mark', mark?.kind);
  setAttribute(cell, 'aria-description', mark?.told);
}

/** The row header as a cell: its id, what is wrong with the row, and how it differs. */
export function idView(key: string, row: RowView | undefined): CellView {
  const { id: text = key, message = '', mark } = row ?? {};
  const severity = message === '' ? '' : 'error';
  const view = {
    shown: text,
    typed: text,
    look: 'typed',
    formula: false,
    message,
    severity,
  } as const;
  return mark === undefined ? view : { ...view, mark };
}

/** One pooled row: its cells are made once and only what differs is written again. */
export class RowElement {
  readonly root: HTMLElement;
  readonly cells: readonly HTMLElement[];
  readonly #columns: readonly ColumnView[];
  readonly #room: Room;
  readonly #texts: readonly Text[];
  readonly #views: (CellView | undefined)[];
  #content: RowContent | undefined;
  #line = -1;
  #selected = '';

  constructor(columns: readonly ColumnView[], room: Room) {
    this.#columns = columns;
    this.#room = room;
    this.root = element('div', { class: 'row', attributes: { role: 'row' } });
    const texts: Text[] = [];
    this.cells = [undefined, ...columns].map((column, index) => {
      const cell = element('div', {
        class: column === undefined ? 'cell id' : 'cell',
        attributes: {
          role: column === undefined ? 'rowheader' : 'gridcell',
          'aria-colindex': String(index + 1),
        },
      });
      cell.style.setProperty('width', `var(${widthProperty(index)})`);
      const text = document.createTextNode('');
      texts.push(text);
      cell.append(text);
      return cell;
    });
    this.#texts = texts;
    this.#views = columns.map(() => undefined);
    this.root.append(...this.cells);
  }

  /** Row key that it shows. */
  get key(): string {
    return this.#content?.key ?? '';
  }

  place(line: number): void {
    if (line === this.#line) return;
    this.#line = line;
    placeLine(this.root, line);
  }

  /** Paints what differs; a row that is still the same object costs a few comparisons. */
  paint(content: RowContent): void {
    const before = this.#content;
    const { key, table, row, editable, echoed } = content;
    this.#content = content;
    const named = before?.key === key && before.table === table;
    if (!named) this.#name(content);
    const same = named && before.row === row && before.editable === editable;
    if (!same) this.#paintHead(content);
    if (same && !echoed && !before.echoed) return;
    content.views().forEach((view, index) => {
      if (this.#views[index] !== view) this.#paintCell(view, index);
    });
  }

  /** A column has another width; its number as `Room` has it. */
  fit(column: number): void {
    const shown = this.#texts[column + 1]?.data ?? '';
    this.cells[column + 1]?.classList.toggle('fits', this.#fits(shown, column));
  }

  paintSelection(row: number, rectangle: Rectangle, active: Spot): void {
    const { top, bottom, left, right } = rectangle;
    const column = active.row === row ? active.column : -1;
    const covered = row >= top && row <= bottom ? `${String(left)}:${String(right)}` : '';
    const selected = `${String(column)} ${covered}`;
    if (selected === this.#selected) return;
    this.#selected = selected;
    this.cells.forEach((cell, column) => {
      const selected = contains(rectangle, { row, column });
      setAttribute(cell, 'aria-selected', selected ? 'true' : 'false');
      const isActive = active.row === row && active.column === column;
      if (cell.classList.contains('active') !== isActive) cell.classList.toggle('active', isActive);
    });
  }

  #name(content: RowContent): void {
    const { root } = this;
    root.dataset['row'] = content.key;
    [idColumn, ...this.#columns.map((column) => column.key)].forEach((key, index) => {
      const cell = this.cells[index];
      if (cell !== undefined) cell.dataset['cell'] = `${content.key}/${key}`;
    });
    const [hash] = content.key.split('#');
    const text = this.#texts[0];
    if (text !== undefined) text.data = hash ?? content.key;
    this.fit(-1);
  }

  #paintHead(content: RowContent): void {
    const { row, editable } = content;
    const locked = row?.locked ?? false;
    this.root.classList.toggle('locked', locked);
    this.root.classList.toggle('trouble', (row?.message ?? '') !== '');
    const readOnly = !editable || locked ? 'true' : undefined;
    this.cells.forEach((cell, index) => {
      const column = this.#columns[index - 1];
      setAttribute(cell, 'aria-readonly', column?.editor === 'none' ? 'true' : readOnly);
    });
    const head = this.cells[0];
    if (head === undefined) return;
    setAttribute(head, 'aria-invalid', locked ? 'true' : undefined);
    paintMark(head, row?.mark);
  }

  #paintCell(view: CellView, index: number): void {
    const before = this.#views[index];
    this.#views[index] = view;
    const cell = this.cells[index + 1];
    const text = this.#texts[index + 1];
    const column = this.#columns[index];
    if (cell === undefined || text === undefined || column === undefined) return;
    if (before?.shown !== view.shown) text.data = view.shown;
    const active = cell.classList.contains('active') ? ' active' : '';
    const editing = cell.classList.contains('editing') ? ' editing' : '';
    const name =
      cellClass(view, column) + active + editing + (this.#fits(view.shown, index) ? ' fits' : '');
    if (cell.className !== name) cell.className = name;
    const wrong = view.look === 'error' || view.severity === 'error';
    setAttribute(cell, 'aria-invalid', wrong ? 'true' : undefined);
    paintMark(cell, view.mark);
  }

  // A cell that clips its text is a layer of its own, of which a screen has hundreds: each frame
  // takes nearly twice as long with them.
  #fits(shown: string, column: number): boolean {
    return shown.length <= this.#room(column);
  }
}
