import * as vscode from 'vscode';
import { rowKey, type FileReading } from '../engine/index.ts';
import type { CellAddress, FromWebview } from '../protocol/messages.ts';
import { answer } from './answers.ts';
import type { DeskPanel, DeskServices } from './desk-panel.ts';
import { JobDesk } from './job-desk.ts';
import { knobPlaces, knobStepText } from './knobs.ts';
import { pause } from './pause.ts';
import { savePicture } from './save-picture.ts';
import { sumOfSelection } from './views/selection-sum.ts';

/** Every open job by address, and the grid that has or last had the focus. */
export class Desks {
  readonly #desks = new Map<string, Promise<JobDesk>>();
  readonly #services: DeskServices;
  readonly #sum: vscode.StatusBarItem;
  readonly #waiting = new Map<string, CellAddress>();
  readonly #coming = new Map<string, Promise<void>>();
  readonly #wishes = new Map<string, string>();
  #gridFocus: boolean | undefined;
  active: { readonly desk: JobDesk; readonly panel: DeskPanel } | undefined;
  /** Told of each grid that has been shown its job. */
  shown: (desk: JobDesk, panel: DeskPanel) => void = () => undefined;
  /** Told of each job that is closed. */
  closed: (desk: JobDesk) => void = () => undefined;

  constructor(services: DeskServices, sum: vscode.StatusBarItem) {
    this.#services = services;
    this.#sum = sum;
  }

  get log(): DeskServices['log'] {
    return this.#services.log;
  }

  /** The desk of a document, opened where it is not yet; `read` is a reading of its text made before. */
  desk(document: vscode.TextDocument, read?: FileReading): Promise<JobDesk> {
    const key = document.uri.toString();
    const known = this.#desks.get(key);
    if (known !== undefined) return known;
    const opened = JobDesk.open(document, this.#services, read);
    this.#desks.set(key, opened);
    // A job that could not be opened is tried again the next time.
    opened.catch(() => this.#desks.delete(key));
    return opened;
  }

  /** Says that a job could not be opened, which no text of a file can bring about. */
  failed(document: vscode.TextDocument, error: unknown): void {
    this.#services.log.error(`open ${document.uri.toString()}: ${String(error)}`);
    void vscode.window.showErrorMessage(
      'This job could not be opened as a grid; the log “Panelwright” in the Output view says why. Its text can be opened with “Reopen Editor With…”.',
    );
  }

  /** A grid of this file is on its way: it can be waited for. */
  expect(uri: vscode.Uri, opening: Promise<unknown>): void {
    const key = uri.toString();
    const coming = opening
      .catch(() => undefined)
      .then(() => {
        if (this.#coming.get(key) === coming) this.#coming.delete(key);
      });
    this.#coming.set(key, coming);
  }

  /** The grid that commands act on, once the one in front has opened. */
  async activeIn(front: vscode.Uri | undefined): Promise<Desks['active']> {
    if (front !== undefined) await this.#coming.get(front.toString());
    return this.active;
  }

  known(uri: vscode.Uri): Promise<JobDesk> | undefined {
    return this.#desks.get(uri.toString());
  }

  all(): readonly Promise<JobDesk>[] {
    return [...this.#desks.values()];
  }

  /** Focuses a cell in the grid of this file now, or as soon as one is open. */
  async focus(uri: vscode.Uri, cell: CellAddress): Promise<void> {
    const desk = await this.#desks.get(uri.toString());
    const panel = [...(desk?.panels ?? [])][0];
    if (panel === undefined) this.#waiting.set(uri.toString(), cell);
    else {
      panel.panel.reveal();
      panel.post({ type: 'focus-cell', cell });
    }
  }

  /** Has the grid of this file carry out a command as soon as its page is there. */
  doWhenReady(uri: vscode.Uri, name: string): void {
    this.#wishes.set(uri.toString(), name);
  }

  attach(desk: JobDesk, panel: DeskPanel): void {
    desk.panels.add(panel);
    this.#activate(desk, panel);
    panel.panel.onDidChangeViewState(() => {
      if (panel.panel.active) this.#activate(desk, panel);
      else if (this.active?.panel === panel) this.#sum.hide();
    });
    panel.panel.onDidDispose(() => {
      desk.panels.delete(panel);
      if (this.active?.panel === panel) {
        this.active = undefined;
        this.#sum.hide();
      }
      if (desk.panels.size > 0 || isOpenAsText(desk.document)) return;
      this.#close(desk);
    });
  }

  #close(desk: JobDesk): void {
    this.#desks.delete(desk.document.uri.toString());
    this.closed(desk);
    desk.dispose();
  }

  /**
   * A job opened as text has its problems shown too. One that opens as a grid is left to its editor,
   * which shows the texts before the answers are worked out.
   */
  async textOpened(document: vscode.TextDocument): Promise<void> {
    if (!['panelwright-job', 'panelwright-book'].includes(document.languageId)) return;
    // Its tab comes after the document.
    await pause(200);
    if (!document.isClosed && isOpenAsText(document)) await this.desk(document);
  }

  async textClosed(document: vscode.TextDocument): Promise<void> {
    const desk = await this.known(document.uri);
    if (desk?.panels.size === 0) this.#close(desk);
  }

  #activate(desk: JobDesk, panel: DeskPanel): void {
    if (panel.panel.active) this.active = { desk, panel };
  }

  /** Answers one message of a panel. Never throws: a fault is logged, and what waits for a reply gets one. */
  async receive(desk: JobDesk, panel: DeskPanel, message: FromWebview): Promise<void> {
    try {
      await this.#receive(desk, panel, message);
    } catch (error) {
      this.#services.log.error(`${message.type}: ${String(error)}`);
      if (message.type !== 'ask') return;
      const { request } = message;
      panel.post({
        type: 'refused',
        request,
        message: 'Something went wrong; the log “Panelwright” in the Output view says what.',
      });
    }
  }

  async #receive(desk: JobDesk, panel: DeskPanel, message: FromWebview): Promise<void> {
    switch (message.type) {
      case 'ready':
        desk.show(panel);
        this.shown(desk, panel);
        this.#focusWaiting(desk, panel);
        this.#doWishes(desk, panel);
        return;
      case 'ask':
        await answer(desk, panel, message);
        return;
      case 'cursor':
        panel.cursor = message.cell;
        this.#activate(desk, panel);
        this.#focusedOnGrid(message.cell !== undefined && !message.editing);
        return;
      case 'selection':
        panel.selected = message.rows;
        this.#showSum(panel, sumOfSelection(message, desk.snapshot()));
        return;
      case 'step-knob':
        await stepKnob(desk, message);
        return;
      case 'pin':
        await this.#pin(desk, message.cell, message.pinned);
        return;
      case 'command':
        await vscode.commands.executeCommand(
          `panelwright.${message.name}`,
          desk.document.uri,
          message.line,
        );
        return;
      case 'save':
        await desk.settled();
        await desk.document.save();
        return;
      case 'save-picture':
        await savePicture(desk.document.uri, message);
        return;
      case 'fault':
        this.#services.log.error(`grid: ${message.text}`);
    }
  }

  // Keybindings of row commands ask for it, so that they do not act while someone types. Each telling
  // costs the window a look at all its menus, so it is told only what it does not know.
  #focusedOnGrid(focused: boolean): void {
    if (focused === this.#gridFocus) return;
    this.#gridFocus = focused;
    void vscode.commands.executeCommand('setContext', 'panelwright.gridFocus', focused);
  }

  #focusWaiting(desk: JobDesk, panel: DeskPanel): void {
    const key = desk.document.uri.toString();
    const cell = this.#waiting.get(key);
    if (cell === undefined) return;
    this.#waiting.delete(key);
    panel.post({ type: 'focus-cell', cell });
  }

  #doWishes(desk: JobDesk, panel: DeskPanel): void {
    const key = desk.document.uri.toString();
    const name = this.#wishes.get(key);
    if (name === undefined) return;
    this.#wishes.delete(key);
    panel.post({ type: 'do', name, argument: '' });
  }

  #showSum(panel: DeskPanel, text: string): void {
    panel.post({ type: 'sum', text });
    this.#sum.text = text;
    if (text === '') this.#sum.hide();
    else this.#sum.show();
  }

  async #pin(desk: JobDesk, cell: CellAddress, pinned: boolean): Promise<void> {
    const { pins } = this.#services;
    const { uri } = desk.document;
    const others = knobPlaces(pins, uri, desk.snapshot()).filter(
      (one) => !(rowKey(one) === rowKey(cell) && one.column === cell.column),
    );
    await pins.set(uri, pinned ? [...others, cell] : others);
    desk.pinsChanged();
  }
}

async function stepKnob(
  desk: JobDesk,
  { knob, by }: FromWebview & { readonly type: 'step-knob' },
): Promise<void> {
  const text = knobStepText(knob, by, desk.snapshot());
  if (text === undefined) return;
  const reply = await desk.edit(undefined, undefined, [{ kind: 'type', cell: knob, text }]);
  if (!reply.ok) void vscode.window.showWarningMessage(reply.message);
}

function isOpenAsText(document: vscode.TextDocument): boolean {
  const uri = document.uri.toString();
  return vscode.window.tabGroups.all.some((group) =>
    group.tabs.some(
      (tab) => tab.input instanceof vscode.TabInputText && tab.input.uri.toString() === uri,
    ),
  );
}
