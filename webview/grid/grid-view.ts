import type { CellView, ColumnView, SheetView } from '../../extension/protocol/views.ts';
import { idColumn } from '../addresses.ts';
import { element, setAttribute } from '../dom.ts';
import type { State } from '../state.ts';
import {
  columnEdges,
  headerHeight,
  lettersThatFit,
  paintedRange,
  rowHeight,
  scrollToShow,
  type Viewport,
} from './geometry.ts';
import { GroupElement } from './group-element.ts';
import { makeHeader, type HeaderHooks } from './header.ts';
import { layLines, sameColumns, type Lines } from './lines.ts';
import { idView, RowElement, widthProperty } from './row-element.ts';
import { clampSpot, rectangleOf, type Bounds, type Selection, type Spot } from './selection.ts';

const idWidth = 108;
const usualFontSize = 13;
const noLines: Lines = { all: [], keys: [], lineOfRow: [], rowOfKey: new Map() };

/** Draws one sheet: sticky titles, the rows on screen and a few more, the selection. */
export class GridView {
  readonly scroller: HTMLElement;
  lines: Lines = noLines;
  sheet: SheetView | undefined;
  viewport: Viewport = { top: 0, left: 0, width: 0, height: 0 };
  selection: Selection | undefined;
  widths: readonly number[] = [];
  edges: readonly number[] = [0];
  /** Groups of which only the heading is shown. */
  collapsed: ReadonlySet<string> = new Set();
  readonly #state: State;
  readonly #hooks: HeaderHooks;
  readonly #canvas: HTMLElement;
  #header: HTMLElement | undefined;
  #rows = new Map<string, RowElement>();
  #groups = new Map<string, GroupElement>();
  #spare: RowElement[] = [];
  #fontSize = usualFontSize;

  constructor(state: State, hooks: HeaderHooks) {
    this.#state = state;
    this.#hooks = hooks;
    this.#canvas = element('div', { class: 'grid-canvas', attributes: { role: 'presentation' } });
    this.scroller = element(
      'div',
      {
        class: 'grid',
        data: { grid: '' },
        attributes: { role: 'grid', 'aria-multiselectable': 'true' },
      },
      this.#canvas,
    );
    this.scroller.addEventListener('scroll', () => {
      const { scrollTop, scrollLeft } = this.scroller;
      this.#scrolledTo(scrollTop, scrollLeft);
      this.paint();
    });
  }

  /** Columns count the row header. */
  get bounds(): Bounds {
    return { rows: this.lines.keys.length, columns: (this.sheet?.columns.length ?? 0) + 1 };
  }

  columnKey(column: number): string {
    return column === 0 ? idColumn : (this.sheet?.columns[column - 1]?.key ?? '');
  }

  columnView(column: number): ColumnView | undefined {
    return this.sheet?.columns[column - 1];
  }

  /** Takes the sheet as it is now; its elements are made again only where its columns changed. */
  setSheet(sheet: SheetView, savedWidths: Readonly<Record<string, number>>): void {
    const before = this.sheet;
    this.sheet = sheet;
    if (!sameColumns(before, sheet)) this.#rebuild(sheet, savedWidths);
    this.relay();
    setAttribute(this.scroller, 'aria-label', sheet.label);
    setAttribute(this.scroller, 'aria-colcount', String(sheet.columns.length + 1));
  }

  /** Lays the lines again; the row at the top of the viewport stays where it is. */
  relay(): void {
    const { sheet } = this;
    if (sheet === undefined) return;
    const anchor = this.#anchor();
    const before = this.lines;
    const groupOf = (key: string): string | undefined => this.#state.row(sheet.table, key)?.group;
    this.lines = layLines(sheet, groupOf, this.collapsed);
    this.selection = this.selection && this.#followed(this.selection, before);
    const count = this.lines.all.length;
    this.#canvas.style.setProperty('height', `${String(headerHeight + count * rowHeight)}px`);
    setAttribute(this.scroller, 'aria-rowcount', String(count + 1));
    if (anchor !== undefined) this.#holdAnchor(anchor);
    this.paint();
  }

  setWidth(column: number, width: number): void {
    this.widths = this.widths.map((old, index) => (index === column ? width : old));
    this.edges = columnEdges(this.widths);
    this.#canvas.style.setProperty(widthProperty(column), `${String(width)}px`);
    this.#canvas.style.setProperty('width', `${String(this.edges.at(-1) ?? 0)}px`);
    for (const row of [...this.#rows.values(), ...this.#spare]) row.fit(column - 1);
  }

  resized(width: number, height: number): void {
    this.viewport = { ...this.viewport, width, height };
    this.paint();
  }

  scrollTo(top: number, left: number): void {
    if (top !== this.viewport.top) this.scroller.scrollTop = top;
    if (left !== this.viewport.left) this.scroller.scrollLeft = left;
    this.#scrolledTo(top, left);
  }

  // A sticky cell is a layer of its own to composite, so ids stick only where there is something to stick to.
  #scrolledTo(top: number, left: number): void {
    if (left > 0 !== this.viewport.left > 0) this.scroller.classList.toggle('sideways', left > 0);
    this.viewport = { ...this.viewport, top, left };
  }

  reveal(spot: Spot): void {
    const line = this.lines.lineOfRow[spot.row];
    // The first row is shown with the heading of its group.
    if (line !== undefined) this.revealLine(line === 1 ? 0 : line, spot.column);
  }

  revealLine(line: number, column: number): void {
    if (this.viewport.height === 0) return;
    const { top, left } = scrollToShow(this.viewport, { line, column }, this.edges);
    this.scrollTo(top, left);
  }

  groupElement(group: string): GroupElement | undefined {
    return this.#groups.get(group);
  }

  rowElement(row: number): RowElement | undefined {
    return this.#rows.get(this.lines.keys[row] ?? '');
  }

  cellElement(spot: Spot): HTMLElement | undefined {
    return this.rowElement(spot.row)?.cells[spot.column];
  }

  /** The cell's view; the row header's is its id. */
  cellAt(spot: Spot): CellView | undefined {
    const key = this.lines.keys[spot.row];
    if (this.sheet === undefined || key === undefined) return undefined;
    const column = this.columnView(spot.column);
    if (column === undefined) return idView(key, this.#state.row(this.sheet.table, key));
    return this.#state.cell(this.sheet.table, key, { key: column.key, index: spot.column - 1 });
  }

  /** Paints what is on screen; a cell that still shows the same view costs one comparison. */
  paint(): void {
    const { sheet, lines } = this;
    if (sheet === undefined) return;
    const { from, to } = paintedRange(this.viewport, lines.all.length);
    const wanted = this.#wantedLines(from, to);
    this.#release(wanted);
    const rectangle = this.selection && rectangleOf(this.selection);
    for (const line of wanted) {
      const one = lines.all[line];
      if (one?.kind === 'group') this.#paintGroup(one.group, line);
      else if (one !== undefined) {
        const shown = this.#paintRow(one.key, line, sheet);
        if (rectangle !== undefined && this.selection !== undefined)
          shown.paintSelection(one.row, rectangle, this.selection.active);
      }
    }
  }

  /** Rows that the selection covers or left are painted by the next `paint`. */
  select(selection: Selection | undefined): void {
    this.selection = selection;
    this.paint();
  }

  // The active row is always painted: it holds the focus, however far it is scrolled away.
  #wantedLines(from: number, to: number): readonly number[] {
    const wanted: number[] = [];
    const active = this.selection && this.lines.lineOfRow[this.selection.active.row];
    if (active !== undefined && active < from) wanted.push(active);
    for (let line = from; line < to; line += 1) wanted.push(line);
    if (active !== undefined && active >= to) wanted.push(active);
    return wanted;
  }

  #release(wanted: readonly number[]): void {
    const rows = new Set<string>();
    const groups = new Set<string>();
    for (const line of wanted) {
      const one = this.lines.all[line];
      if (one?.kind === 'row') rows.add(one.key);
      else if (one !== undefined) groups.add(one.group.group);
    }
    for (const [key, shown] of this.#rows)
      if (!rows.has(key)) {
        this.#rows.delete(key);
        this.#spare.push(shown);
        shown.root.hidden = true;
      }
    for (const [group, shown] of this.#groups)
      if (!groups.has(group) && !shown.focused) {
        this.#groups.delete(group);
        shown.root.remove();
      }
  }

  #paintRow(key: string, line: number, sheet: SheetView): RowElement {
    let shown = this.#rows.get(key);
    if (shown === undefined) {
      shown = this.#spare.pop() ?? this.#newRow(sheet);
      shown.root.hidden = false;
      this.#rows.set(key, shown);
    }
    shown.place(line);
    const { table, columns } = sheet;
    shown.paint({
      key,
      table,
      row: this.#state.row(table, key),
      editable: this.#state.editable,
      echoed: this.#state.echoed(table, key),
      views: () =>
        columns.map((column, index) => this.#state.cell(table, key, { key: column.key, index })),
    });
    return shown;
  }

  #newRow(sheet: SheetView): RowElement {
    const made = new RowElement(sheet.columns, (column) =>
      lettersThatFit(this.widths[column + 1] ?? 0, this.#fontSize),
    );
    this.#canvas.append(made.root);
    return made;
  }

  #paintGroup(group: SheetView['groups'][number], line: number): void {
    let shown = this.#groups.get(group.group);
    if (shown === undefined) {
      shown = new GroupElement(this.bounds.columns);
      this.#groups.set(group.group, shown);
      this.#canvas.append(shown.root);
    }
    shown.place(line);
    shown.paint(group, this.collapsed.has(group.group));
  }

  #rebuild(sheet: SheetView, saved: Readonly<Record<string, number>>): void {
    this.#rows = new Map();
    this.#groups = new Map();
    this.#spare = [];
    this.#fontSize = Number.parseFloat(getComputedStyle(this.#canvas).fontSize) || usualFontSize;
    this.#header = makeHeader(sheet.columns, this.#hooks);
    this.#canvas.replaceChildren(this.#header);
    this.widths = [
      saved[idColumn] ?? idWidth,
      ...sheet.columns.map((column) => saved[column.key] ?? column.width),
    ];
    this.widths.forEach((width, column) => {
      this.setWidth(column, width);
    });
  }

  // A selection stays on its rows when others come, go or move; where its row went, the next one
  // takes its place.
  #followed(selection: Selection, before: Lines): Selection | undefined {
    if (this.lines.keys.length === 0) return undefined;
    const follow = (spot: Spot): Spot => {
      const row = this.lines.rowOfKey.get(before.keys[spot.row] ?? '') ?? spot.row;
      return clampSpot({ row, column: spot.column }, this.bounds);
    };
    const { active, from, to } = selection;
    return { active: follow(active), from: follow(from), to: follow(to) };
  }

  #anchor(): { readonly key: string; readonly above: number } | undefined {
    const first = Math.ceil(this.viewport.top / rowHeight);
    const line = this.lines.all.slice(first).find((one) => one.kind === 'row');
    if (line?.kind !== 'row') return undefined;
    return { key: line.key, above: (this.lines.lineOfRow[line.row] ?? 0) * rowHeight };
  }

  #holdAnchor(anchor: { readonly key: string; readonly above: number }): void {
    if (this.viewport.top === 0) return;
    const row = this.lines.rowOfKey.get(anchor.key);
    const line = row === undefined ? undefined : this.lines.lineOfRow[row];
    if (line === undefined) return;
    const shift = line * rowHeight - anchor.above;
    if (shift !== 0) this.scrollTo(Math.max(0, this.viewport.top + shift), this.viewport.left);
  }
}
