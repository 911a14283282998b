import type { CompareChange } from '../extension/protocol/compare-view.ts';
import type { Actions } from './actions.ts';
import { idColumn, rowAddress } from './addresses.ts';
import type { Whole } from './whole.ts';
import type { Channel } from './channel.ts';
import { copiedSelection, pasteBlock } from './grid/clipboard.ts';
import { readTsv } from './grid/clipboard-text.ts';
import type { Panes } from './panes.ts';
import { showKeys } from './panes/keys-dialog.ts';
import type { ViewMemory } from './view-state.ts';

export interface CommandParts {
  readonly app: Whole;
  readonly panes: Panes;
  readonly actions: Actions;
  readonly channel: Channel;
  readonly memory: ViewMemory;
}

type Command = (parts: CommandParts, argument: string) => void;

/** Brings a pane to the front, and the side where it stands. */
function bringing(pane: string): Command {
  return ({ app, memory, panes }) => {
    if (!memory.now.asideShown) toggleAside(app, memory);
    panes.showPane(pane);
  };
}

/** One of the extension's own commands, on this file. */
function posting(name: string): Command {
  return ({ channel }) => {
    channel.post({ type: 'command', name });
  };
}

/** What can be done by name: by keys and buttons (`insert-row`) and VS Code's commands (`insertRow`). */
const commands: Readonly<Record<string, Command>> = {
  'insert-row': ({ actions }, kind) => void actions.insertRow(kind),
  'duplicate-row': ({ actions }) => {
    actions.duplicateRows();
  },
  'delete-row': ({ actions }) => {
    actions.deleteRows();
  },
  'move-row-up': ({ actions }) => {
    actions.moveRows(-1);
  },
  'move-row-down': ({ actions }) => {
    actions.moveRows(1);
  },
  'rename-row': ({ actions }) => void actions.renameRow(),
  'insert-kit': ({ actions }, kit) => void actions.insertKit(kit),
  'answer-asks': ({ actions }) => void actions.answerAsks(),
  'trace-outline': ({ actions }) => void actions.traceOutline(),
  'where-from': ({ actions }, line) =>
    void (line === '' ? actions.whereFromCell() : actions.whereFromLine(line)),
  clear: ({ actions }) => {
    actions.clear();
  },
  'fill-down': ({ actions }) => {
    actions.fillDown();
  },
  'edit-cell': ({ app }) => {
    app.focusGrid();
    app.grid.editor.begin('caret');
  },
  paste: ({ app }, text) => {
    pasteText(app, text);
  },
  copy: ({ app }) => {
    app.focusGrid();
    void navigator.clipboard.writeText(copiedSelection(app.grid).text);
  },
  pin: ({ app, channel, panes }, column) => {
    pin({ app, channel, panes }, column);
  },
  'to-card': ({ app, memory, panes }) => {
    if (!memory.now.asideShown) toggleAside(app, memory);
    panes.showPane(panes.narrow ? 'card' : memory.now.pane);
    panes.card.focusFirst();
  },
  'focus-grid': ({ app }) => {
    app.focusGrid();
  },
  'show-bill': ({ panes }) => {
    panes.showPane('bill');
  },
  'show-problems': ({ panes }) => {
    panes.showPane('problems');
  },
  'show-panel': bringing('panel'),
  'show-mix-plan': bringing('mix'),
  'show-schedule': bringing('schedule'),
  'lock-in-place': ({ panes }) => void panes.cut.lock(),
  'compare-options': bringing('options'),
  'show-actuals': bringing('actuals'),
  'add-option': posting('addOption'),
  'accept-option': ({ app }, key) =>
    void app.edits.send([{ kind: 'accept-option', row: rowAddress('option', key) }]),
  'update-rates': posting('updateRates'),
  'set-start': ({ app }) => {
    app.goTo({ table: 'job', id: 'start', occurrence: 0, column: 'value' });
  },
  'panel-larger': ({ memory, panes }) => {
    memory.change({ panelLarge: !memory.now.panelLarge });
    panes.showPane('panel');
  },
  'save-picture': ({ panes }) => void panes.panel.save(),
  'toggle-aside': ({ app, memory, panes }) => {
    toggleAside(app, memory);
    panes.showPane(memory.now.pane);
  },
  'start-blank': ({ panes }) => {
    panes.startBlank();
  },
  find: ({ panes }) => {
    panes.find.open();
  },
  'show-keys': () => {
    showKeys();
  },
  'dismiss-notice': ({ app, panes }) => {
    panes.notice.hide();
    app.focusGrid();
  },
  'edit-again': ({ app, panes }) => {
    const { cell, text } = panes.notice.refusal ?? {};
    panes.notice.hide();
    if (cell !== undefined && text !== undefined) app.editAgain(cell, text);
  },
  'switch-units': posting('switchUnits'),
  'next-change': ({ app, panes }) => {
    goToChange(app, panes, panes.compare.step(1));
  },
  'previous-change': ({ app, panes }) => {
    goToChange(app, panes, panes.compare.step(-1));
  },
  'go-change': ({ app, panes }, index) => {
    goToChange(app, panes, panes.compare.choose(Number(index)));
  },
  'stop-comparing': posting('stopComparing'),
  'preview-paper': posting('previewPaper'),
  'write-paper': posting('writePaper'),
  'show-price': ({ panes }) => {
    panes.showPane('price');
  },
  'export-bill': posting('exportBill'),
  'export-patterns': posting('exportPatterns'),
  'export-cut-layouts': posting('exportCutLayouts'),
  'open-as-text': ({ channel }, line) => {
    const at = Number(line);
    channel.post({ type: 'command', name: 'openAsText', ...(at > 0 && { line: at }) });
  },
};

function kebab(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

/** VS Code's names of commands that are called otherwise here. */
const otherNames: Readonly<Record<string, string>> = {
  'show-where-from': 'where-from',
  'rename-row-id': 'rename-row',
};

/**
 * Carries out a command that was chosen in VS Code. One from the grid's own menu brings the cell it
 * was opened on, which the click has put under the cursor already.
 */
export function runHostCommand(parts: CommandParts, name: string, argument: string): void {
  const own = kebab(name);
  runDo(parts, otherNames[own] ?? own, argument.startsWith('{') ? '' : argument);
}

/** Carries out a named command; unknown names are of a newer host and do nothing. */
export function runDo(parts: CommandParts, name: string, argument: string): void {
  commands[name]?.(parts, argument);
}

/** Carries out what a clicked control says. */
export function runButton(parts: CommandParts, control: HTMLElement): void {
  const { action = '', argument = '' } = control.dataset;
  if (action.startsWith('knob-')) runKnob(parts, control, action);
  else if (action === 'go-check') goToCheck(parts, control);
  else if (action === 'go-row') goToRow(parts, control);
  else if (action === 'go-problem' || action === 'take-fix') runProblem(parts, control, action);
  else runDo(parts, action, argument);
}

function runKnob({ app, channel }: CommandParts, control: HTMLElement, action: string): void {
  const holder = control.closest<HTMLElement>('[data-knob]');
  const name = holder?.dataset['knob'] ?? '';
  const slash = name.indexOf('/');
  const table = holder?.dataset['table'] ?? '';
  const cell = { ...rowAddress(table, name.slice(0, slash)), column: name.slice(slash + 1) };
  if (action === 'knob-go') app.goTo(cell);
  else if (action === 'knob-unpin') channel.post({ type: 'pin', cell, pinned: false });
  else channel.post({ type: 'step-knob', knob: cell, by: action === 'knob-up' ? 1 : -1 });
}

function runProblem(
  { app, panes, actions }: CommandParts,
  control: HTMLElement,
  action: string,
): void {
  const inCard = control.closest('[data-card]') !== null;
  const list = inCard ? panes.card.view?.problems : panes.problems.problems;
  const problem = list?.[Number(control.dataset['problem'])];
  if (problem === undefined) return;
  if (action === 'take-fix') {
    actions.takeFix(problem, Number(control.dataset['fix']));
    return;
  }
  const { table, row, occurrence, column } = problem;
  if (row !== '') app.goTo({ table, id: row, occurrence, column });
}

function goToChange(app: Whole, panes: Panes, change: CompareChange | undefined): void {
  if (change === undefined) {
    panes.status.say('There is no change to go to.');
    return;
  }
  app.goTo({ ...change, column: change.column === '' ? idColumn : change.column });
  panes.status.say(`${change.place}: ${change.told}.`);
}

function goToCheck({ app }: CommandParts, control: HTMLElement): void {
  const { argument: id = '', occurrence = '0' } = control.dataset;
  app.goTo({ table: 'check', id, occurrence: Number(occurrence), column: 'value' });
}

function goToRow({ app }: CommandParts, control: HTMLElement): void {
  const { table = '', argument: id = '', occurrence = '0', column = 'name' } = control.dataset;
  app.goTo({ table, id, occurrence: Number(occurrence), column });
}

function pin(
  { app, channel, panes }: Pick<CommandParts, 'app' | 'channel' | 'panes'>,
  column: string,
): void {
  const cell = app.grid.activeCell;
  const row = app.grid.activeRow;
  if (row === undefined || cell === undefined) return;
  const key = column === '' ? cell.column : column;
  const field = panes.card.view?.fields.find((one) => one.key === key);
  channel.post({ type: 'pin', cell: { ...row, column: key }, pinned: field?.pinned !== true });
}

function pasteText(app: Whole, text: string): void {
  app.focusGrid();
  pasteBlock(app.grid, readTsv(text), {
    send: (edits) => void app.edits.send(edits),
    say: () => undefined,
  });
}

function toggleAside(app: Whole, memory: ViewMemory): void {
  const asideShown = !memory.now.asideShown;
  memory.change({ asideShown });
  app.root.classList.toggle('aside-hidden', !asideShown);
}
