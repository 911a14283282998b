import type { CellAddress } from '../extension/protocol/messages.ts';
import type { Edits } from './edits.ts';
import type { Grid } from './grid/grid.ts';
import type { FocusWish } from './grid/held-focus.ts';
import type { State } from './state.ts';

/** The page as its parts see it. */
export interface Whole {
  readonly root: HTMLElement;
  readonly state: State;
  readonly grid: Grid;
  readonly edits: Edits;
  /** Brings a cell on screen and under the cursor, on whatever sheet it is; the keyboard follows unless told. */
  readonly goTo: (cell: CellAddress, focus?: boolean) => void;
  readonly showSheet: (table: string, focus: FocusWish) => void;
  /** The keyboard goes back to the active cell. */
  readonly focusGrid: () => void;
  /** Does something once the answer to the edit under way is painted; at once where there is none. */
  readonly afterwards: (run: () => void) => void;
  /** What the file holds of a cell of any sheet, as far as it is here. */
  readonly typedText: (cell: CellAddress) => string;
  /** Opens the cell with a text that was typed there before. */
  readonly editAgain: (cell: CellAddress, text: string) => void;
}
