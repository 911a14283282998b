import type * as vscode from 'vscode';
import type { CellAddress, RowAddress, ToWebview } from '../protocol/messages.ts';
import type { HeavyHand } from './heavy-hand.ts';
import type { PinStore } from './knobs.ts';

/** One open grid: a panel of a document. */
export interface DeskPanel {
  readonly post: (message: ToWebview) => void;
  readonly panel: vscode.WebviewPanel;
  /** True once its page has said so: nothing is sent before. */
  ready: boolean;
  /** Where its cursor is. */
  cursor: CellAddress | undefined;
  /** Rows that are selected. */
  selected?: readonly RowAddress[];
}

/** Panel and request that asked for an edit, with the rows that were typed into. */
export interface Cause {
  readonly panel: DeskPanel | undefined;
  readonly request: number | undefined;
  readonly typed: readonly RowAddress[];
}

export const noCause: Cause = { panel: undefined, request: undefined, typed: [] };

export interface DeskServices {
  readonly diagnostics: vscode.DiagnosticCollection;
  readonly pins: PinStore;
  readonly log: vscode.LogOutputChannel;
  /** A worker of a job's own for what is too heavy for a keystroke. */
  readonly hand: () => HeavyHand;
}
