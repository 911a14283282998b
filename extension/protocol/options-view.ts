import type { CellAddress, RowAddress } from './addresses.ts';

/** A figure of the job and of each option, in words. */
export interface OptionFigureView {
  readonly label: string;
  readonly now: string;
  /** In the order of the options; `change` is the difference from the job as it is. */
  readonly then: readonly { readonly text: string; readonly change: string }[];
}

/** A cell that an option says otherwise. */
export interface OptionCellView {
  readonly cell: CellAddress;
  /** "Midbass ring: lean to". */
  readonly name: string;
  readonly now: string;
  readonly then: string;
}

export interface OptionView extends RowAddress {
  readonly name: string;
  readonly note: string;
  /** Why it cannot be taken into the job; empty where it can. */
  readonly problem: string;
  readonly cells: readonly OptionCellView[];
}

/** Named alternatives of a job side by side. */
export interface OptionsView {
  /** Why nothing is compared; empty where something is. */
  readonly message: string;
  /** What the weight leaves out; empty where it is whole. */
  readonly note: string;
  readonly figures: readonly OptionFigureView[];
  readonly options: readonly OptionView[];
}
