import type { CompareView } from '../extension/protocol/compare-view.ts';
import type { CellAddress, FromWebview, ToWebview } from '../extension/protocol/messages.ts';
import { Actions } from './actions.ts';
import { Afterwards } from './afterwards.ts';
import { rowKey } from './addresses.ts';
import { Channel } from './channel.ts';
import { runButton, runDo, runHostCommand, type CommandParts } from './commands.ts';
import { closest } from './dom.ts';
import { Edits, type Refusal } from './edits.ts';
import { fillEdits, listenToClipboard } from './grid/clipboard.ts';
import { runKey } from './grid/commands.ts';
import { Grid } from './grid/grid.ts';
import type { GridHooks } from './grid/grid-parts.ts';
import type { FocusWish } from './grid/held-focus.ts';
import { PointerSelection } from './grid/pointer.ts';
import { layPage, listenToSplitter } from './page.ts';
import { Panes } from './panes.ts';
import { ResolvePage } from './panes/resolve.ts';
import { Report } from './report.ts';
import { State, type Changes } from './state.ts';
import { Popup } from './suggest/popup.ts';
import type { Ask } from './suggest/suggester.ts';
import { TotalsFirst } from './totals-first.ts';
import { ViewMemory } from './view-state.ts';
import type { Whole } from './whole.ts';

// What is typed beside the grid stands there to be read: its cell waits for the answer a little, so
// that both come in one frame.
const echoAfterMs = 80;

/** What VS Code (or a test) gives the page. */
export interface Outside {
  readonly post: (message: FromWebview) => void;
  readonly kept: unknown;
  readonly keep: (state: unknown) => void;
}

/** The whole page: messages in, gestures out. */
export class App implements Whole {
  readonly root: HTMLElement;
  readonly state = new State();
  readonly grid: Grid;
  readonly edits: Edits;
  readonly #channel: Channel;
  readonly #memory: ViewMemory;
  readonly #panes: Panes;
  readonly #actions: Actions;
  readonly #commands: CommandParts;
  readonly #report: Report;
  readonly #resolve: ResolvePage;
  readonly #turns = new TotalsFirst(this.#take.bind(this));
  readonly #afterwards = new Afterwards(window);

  constructor(outside: Outside) {
    this.#channel = new Channel(outside.post);
    this.#memory = new ViewMemory(outside.kept, outside.keep);
    const repaint = (tables: ReadonlySet<string>): void => {
      if (tables.has(this.grid.table)) this.grid.refresh(false);
    };
    this.edits = new Edits(this.state, this.#channel, {
      repaint,
      echoed: (tables) => {
        if (this.grid.hasFocus && !this.grid.editor.open) repaint(tables);
        else setTimeout(repaint, echoAfterMs, tables);
      },
      refused: (refusal) => {
        this.#refused(refusal);
      },
      goToRow: (row) => {
        this.#afterwards.now();
        if (row.table !== this.grid.table) this.showSheet(row.table, 'take');
        this.grid.goToRow(row);
      },
      answered: this.#afterwards.answered.bind(this.#afterwards),
    });
    const popup = new Popup();
    const ask: Ask = (question) => this.edits.ask(question);
    const { state } = this;
    this.grid = new Grid({ state, popup, ask, memory: this.#memory, hooks: this.#gridHooks() });
    this.#report = new Report(this.#channel, this.grid);
    this.#actions = new Actions({
      state,
      grid: this.grid,
      edits: this.edits,
      say: (text) => {
        this.#panes.status.say(text);
      },
      goTo: (cell) => {
        this.goTo(cell);
      },
    });
    this.#panes = new Panes({
      app: this,
      popup,
      ask,
      memory: this.#memory,
      actions: this.#actions,
      post: outside.post,
    });
    this.#commands = {
      app: this,
      panes: this.#panes,
      actions: this.#actions,
      channel: this.#channel,
      memory: this.#memory,
    };
    this.root = layPage(this.#panes.pageParts(popup.root));
    this.#resolve = new ResolvePage(ask, (text) => {
      this.#panes.status.say(text);
    });
    this.root.querySelector('#sheet')?.append(this.#resolve.root);
    this.#listen();
  }

  receive(message: ToWebview): void {
    this.#turns.receive(message);
  }

  #take(message: ToWebview): void {
    this.#channel.receive(message);
    const changes = this.state.apply(message);
    if (changes !== undefined) this.#paint(changes, message);
    else if (message.type === 'sum') this.#panes.status.sum(message.text);
    else if (message.type === 'compare') this.#compared(message.view);
    else if (message.type === 'progress') this.#panes.cut.progress(message.about, message.share);
    else this.#bidden(message);
  }

  /** What a command of VS Code wants comes behind what the keys before it did. */
  #bidden(message: ToWebview): void {
    if (message.type === 'take-focus') this.grid.takeFocus();
    if (message.type !== 'focus-cell' && message.type !== 'do') return;
    this.#afterwards.now();
    if (message.type === 'focus-cell') this.goTo(message.cell);
    else runHostCommand(this.#commands, message.name, message.argument);
  }

  #compared(view: CompareView | undefined): void {
    this.state.mark(view);
    this.grid.refresh(false);
    this.#panes.compared(view);
  }

  /** Brings a cell on screen and under the cursor, on whatever sheet it is. */
  goTo(cell: CellAddress, focus = true): void {
    if (this.state.sheet(cell.table) === undefined) return;
    if (cell.table !== this.grid.table) this.showSheet(cell.table, focus ? 'take' : 'leave');
    if (!this.grid.goTo(cell, focus)) this.grid.goToRow(cell);
  }

  showSheet(table: string, focus: FocusWish): void {
    const sheet = this.state.sheet(table) ?? this.state.job?.sheets[0];
    if (sheet === undefined) return;
    this.#memory.change({ table: sheet.table });
    this.grid.show(sheet, focus);
    this.#panes.sheetChanged();
    this.#report.cursor();
    this.#report.selection();
  }

  /** The keyboard goes back to the active cell. */
  focusGrid(): void {
    this.grid.afterRepaint('take');
  }

  afterwards(run: () => void): void {
    if (this.edits.underWay) this.#afterwards.put(run);
    else run();
  }

  #paint(changes: Changes, message: ToWebview): void {
    if (changes.job) this.#shown();
    else if (changes.tables.has(this.grid.table)) this.grid.refresh(message.type === 'rows');
    if (message.type === 'patch' && message.part === 'totals') {
      this.#panes.paintTotals();
      this.#afterwards.written(message);
      return;
    }
    this.#panes.paint(changes);
    if (this.state.job !== undefined) {
      this.root.dataset['state'] = this.state.job.state;
      this.#resolve.paint(this.state.job, this.state.revision);
    }
    if (message.type === 'patch') this.#afterwards.written(message);
  }

  #shown(): void {
    const { job } = this.state;
    if (job === undefined) return;
    const table = this.grid.table === '' ? this.#memory.now.table : this.grid.table;
    const focus = this.grid.table === '' || this.grid.hasFocus ? 'keep' : 'leave';
    this.showSheet(table, focus);
  }

  #refused(refusal: Refusal): void {
    this.#afterwards.now();
    this.#panes.notice.show(refusal);
    this.#panes.card.restore();
    this.#panes.status.say(refusal.message);
    const { cell, text } = refusal;
    const busy = this.grid.editor.editing || document.querySelector('dialog[open]') !== null;
    if (cell === undefined || text === undefined || busy || !this.grid.hasFocus) return;
    this.editAgain(cell, text);
  }

  /** Opens the cell with a text that was typed there before. */
  editAgain(cell: CellAddress, text: string): void {
    this.goTo(cell);
    this.grid.editor.begin('caret', text);
  }

  #gridHooks(): GridHooks {
    return {
      cursor: () => {
        this.#panes.cursorChanged();
        this.#report.cursor();
      },
      selection: () => {
        this.#report.selection();
      },
      typing: (text) => {
        this.#panes.typing(text);
        this.#report.cursor();
      },
      commit: (cell, text) => {
        this.#panes.notice.hide();
        this.#actions.commit(cell, text, this.typedText(cell));
      },
      afterwards: this.afterwards.bind(this),
      fill: (text) => {
        void this.edits.send(fillEdits(this.grid, text));
        this.focusGrid();
      },
      key: (event) => {
        const act = (name: string): void => {
          runDo(this.#commands, name, '');
        };
        if (!runKey(this.grid, event, act)) return;
        event.preventDefault();
        event.stopPropagation();
      },
      say: (text) => {
        this.#panes.status.say(text);
      },
      handOver: (text) => this.#panes.handOver(text),
    };
  }

  /** What the file holds of a cell of any sheet, as far as it is here. */
  typedText(cell: CellAddress): string {
    const sheet = this.state.sheet(cell.table);
    const index = sheet?.columns.findIndex((column) => column.key === cell.column) ?? -1;
    if (index < 0) return cell.column === 'id' ? cell.id : '\u0000';
    return this.state.cell(cell.table, rowKey(cell), { key: cell.column, index }).typed;
  }

  #listen(): void {
    new PointerSelection(this.grid);
    listenToClipboard(this.grid, {
      send: (edits) => void this.edits.send(edits),
      say: (text) => {
        this.#panes.status.say(text);
      },
    });
    this.root.addEventListener('click', (event) => {
      const control = closest(event, '[data-action]');
      if (control !== undefined && !control.hasAttribute('disabled'))
        runButton(this.#commands, control);
    });
    this.root.addEventListener('keydown', (event) => {
      // VS Code saves nothing of a file that it does not know to be changed yet.
      if (!isSave(event) || !this.edits.underWay) return;
      event.preventDefault();
      event.stopPropagation();
      this.#channel.post({ type: 'save' });
    });
    this.root.addEventListener('focusin', () => {
      this.#report.cursor();
    });
    listenToSplitter(this.root, {
      get: () => this.#memory.now.asideWidth,
      set: (asideWidth) => {
        this.#memory.change({ asideWidth });
        this.root.style.setProperty('--aside-width', `${String(asideWidth)}px`);
      },
    });
    this.root.classList.toggle('aside-hidden', !this.#memory.now.asideShown);
    if (typeof ResizeObserver === 'undefined') return;
    new ResizeObserver(([entry]) => {
      if (entry !== undefined)
        this.grid.view.resized(entry.contentRect.width, entry.contentRect.height);
    }).observe(this.grid.view.scroller);
  }
}

function isSave({ key, ctrlKey, metaKey, shiftKey, altKey }: KeyboardEvent): boolean {
  return key.toLowerCase() === 's' && (ctrlKey || metaKey) && !shiftKey && !altKey;
}
