import type { CellAddress } from '../../extension/protocol/messages.ts';
import type { EntryTarget } from '../suggest/suggester.ts';
import type { CellView } from '../../extension/protocol/views.ts';
import type { EditorHooks, Move } from './cell-editor.ts';
import type { GridHooks } from './grid-parts.ts';
import type { GridView } from './grid-view.ts';
import type { Hint } from './hint.ts';
import type { Selection } from './selection.ts';

/** The grid as its editor sees it. */
interface EditedGrid {
  readonly view: GridView;
  readonly hint: Hint;
  readonly selection: Selection | undefined;
  readonly activeCell: CellAddress | undefined;
  readonly activeView: CellView | undefined;
  readonly target: () => EntryTarget | undefined;
  readonly columnOf: (key: string) => number;
  readonly whyNot: () => string;
  readonly moveAfter: (move: Move) => void;
  readonly afterRepaint: (focus: 'take') => void;
}

/** What the entry in the active cell asks of the grid and tells it. */
export class Editing implements EditorHooks {
  readonly #grid: EditedGrid;
  readonly #hooks: GridHooks;
  // Fixed when an edit begins: rows may come and go while the person types.
  #cell: CellAddress | undefined;

  constructor(grid: EditedGrid, hooks: GridHooks) {
    this.#grid = grid;
    this.#hooks = hooks;
  }

  target(): EntryTarget | undefined {
    const cell = this.#cell;
    if (cell === undefined) return this.#grid.target();
    const { view } = this.#grid;
    const column = view.columnView(this.#grid.columnOf(cell.column));
    return { cell, editor: column?.editor ?? 'text' };
  }

  startText(): string {
    return this.#grid.activeView?.typed ?? '';
  }

  changed(text: string): void {
    this.#cell ??= this.#grid.activeCell;
    this.#grid.hint.hide();
    this.#hooks.typing(text);
  }

  commit(text: string, move: Move, shut: () => void): void {
    const cell = this.#cell;
    this.#cell = undefined;
    if (cell !== undefined) this.#hooks.commit(cell, text);
    const ended = (): void => {
      shut();
      this.#hooks.typing(undefined);
      this.#grid.moveAfter(move);
    };
    if (move === 'stay') ended();
    else this.#hooks.afterwards(ended);
  }

  fill(text: string): void {
    this.#ended();
    this.#hooks.fill(text);
  }

  cancelled(): void {
    this.#ended();
    this.#grid.afterRepaint('take');
  }

  refuseTyping(): void {
    const { selection, hint } = this.#grid;
    const why = this.#grid.whyNot();
    if (selection !== undefined) hint.show(selection.active, why, 'note');
    this.#hooks.say(why);
  }

  key(event: KeyboardEvent): void {
    this.#hooks.key(event);
  }

  handOver(text: string): boolean {
    const took = this.#hooks.handOver(text);
    if (took) this.#cell = undefined;
    return took;
  }

  #ended(): CellAddress | undefined {
    const cell = this.#cell;
    this.#cell = undefined;
    this.#hooks.typing(undefined);
    return cell;
  }
}
