import type { CellAddress } from '../../extension/protocol/messages.ts';
import type { State } from '../state.ts';
import type { Popup } from '../suggest/popup.ts';
import type { Ask } from '../suggest/suggester.ts';
import type { ViewMemory } from '../view-state.ts';

/** What the grid tells the rest of the page. */
export interface GridHooks {
  /** The active cell, or what it shows, changed. */
  readonly cursor: () => void;
  readonly selection: () => void;
  /** Text being typed in the cell; `undefined` when the edit ended. */
  readonly typing: (text: string | undefined) => void;
  readonly commit: (cell: CellAddress, text: string) => void;
  /** Does something once what was committed is painted. */
  readonly afterwards: (run: () => void) => void;
  readonly fill: (text: string) => void;
  readonly key: (event: KeyboardEvent) => void;
  readonly say: (text: string) => void;
  readonly handOver: (text: string) => boolean;
}

export interface GridParts {
  readonly state: State;
  readonly popup: Popup;
  readonly ask: Ask;
  readonly memory: ViewMemory;
  readonly hooks: GridHooks;
}
