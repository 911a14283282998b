import { closest } from '../dom.ts';
import type { State } from '../state.ts';
import type { ViewMemory } from '../view-state.ts';
import type { GridView } from './grid-view.ts';
import type { Hint } from './hint.ts';
import { selectSpot, type Selection } from './selection.ts';

/** The grid as its groups see it. */
interface GroupedGrid {
  readonly view: GridView;
  readonly hint: Hint;
  readonly table: string;
  readonly selection: Selection | undefined;
  readonly select: (selection: Selection) => void;
  readonly finish: () => void;
  readonly refresh: (relay: boolean) => void;
  readonly afterRepaint: (focus: 'take') => void;
}

/** The groups of rows of a sheet: their headings take the focus, collapse and expand. */
export class Groups {
  readonly #grid: GroupedGrid;
  readonly #state: State;
  readonly #memory: ViewMemory;

  constructor(grid: GroupedGrid, parts: { readonly state: State; readonly memory: ViewMemory }) {
    this.#grid = grid;
    this.#state = parts.state;
    this.#memory = parts.memory;
    const { scroller } = grid.view;
    scroller.addEventListener('mousedown', (event) => {
      // The heading's button takes the focus on its click, wherever on the line that is.
      if (closest(event, '.row.group') !== undefined) event.preventDefault();
    });
    scroller.addEventListener('click', (event) => {
      const group = closest(event, '.row.group')?.dataset['group'];
      if (group !== undefined) this.set(group, !grid.view.collapsed.has(group));
    });
    scroller.addEventListener('keydown', (event) => {
      const group = closest(event, '.group-toggle')?.closest<HTMLElement>('.row')?.dataset['group'];
      if (group === undefined || !this.#key(group, event)) return;
      event.preventDefault();
      event.stopPropagation();
    });
  }

  /** Groups of a table that were left collapsed. */
  collapsedIn(table: string): ReadonlySet<string> {
    return new Set(this.#memory.now.collapsed[table]);
  }

  /** Collapses or expands a group; the focus goes to its heading. */
  set(group: string, collapsed: boolean): void {
    const grid = this.#grid;
    grid.finish();
    const groups = new Set(grid.view.collapsed);
    if (collapsed) groups.add(group);
    else groups.delete(group);
    this.#change(groups);
    this.focus(group);
  }

  /** Collapses the group of the active row. */
  collapseActive(): void {
    const { view, selection } = this.#grid;
    const line = view.lines.lineOfRow[selection?.active.row ?? -1] ?? -1;
    const above = view.lines.all.slice(0, line + 1).findLast((one) => one.kind === 'group');
    if (above?.kind === 'group') this.set(above.group.group, true);
  }

  /** Expands the group that hides a row, if one does. */
  uncover(key: string): void {
    const { view, table } = this.#grid;
    const group = this.#state.row(table, key)?.group;
    if (group === undefined || !view.collapsed.has(group)) return;
    this.#change(new Set([...view.collapsed].filter((one) => one !== group)));
  }

  /** Puts the focus on the heading next to a row, if there is one on that side. */
  stopBeside(row: number, by: number): boolean {
    const { lines } = this.#grid.view;
    const line = lines.lineOfRow[row];
    const next = line === undefined || by === 0 ? undefined : lines.all[line + by];
    if (next?.kind !== 'group') return false;
    this.focus(next.group.group);
    return true;
  }

  focus(group: string): void {
    const { view } = this.#grid;
    const line = this.#lineOf(group);
    if (line < 0) return;
    view.revealLine(line, 0);
    view.paint();
    view.groupElement(group)?.focus();
  }

  #change(collapsed: ReadonlySet<string>): void {
    const grid = this.#grid;
    grid.view.collapsed = collapsed;
    this.#memory.setCollapsed(grid.table, [...collapsed]);
    grid.hint.hide();
    grid.refresh(true);
  }

  #lineOf(group: string): number {
    const { all } = this.#grid.view.lines;
    return all.findIndex((one) => one.kind === 'group' && one.group.group === group);
  }

  #key(group: string, event: KeyboardEvent): boolean {
    if (event.altKey || event.metaKey || event.shiftKey || event.ctrlKey) return false;
    switch (event.key) {
      case 'ArrowLeft':
      case 'ArrowRight':
        this.set(group, event.key === 'ArrowLeft');
        return true;
      case 'ArrowUp':
      case 'ArrowDown':
        this.#step(group, event.key === 'ArrowUp' ? -1 : 1);
        return true;
      case 'Escape':
        this.#grid.afterRepaint('take');
        return true;
      default:
        return false;
    }
  }

  #step(group: string, by: 1 | -1): void {
    const grid = this.#grid;
    const next = grid.view.lines.all[this.#lineOf(group) + by];
    if (next?.kind === 'group') this.focus(next.group.group);
    else if (next !== undefined)
      grid.select(selectSpot({ row: next.row, column: grid.selection?.active.column ?? 1 }));
  }
}
