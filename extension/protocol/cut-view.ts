import type { PanelChoice, PictureView } from './panel-view.ts';

/** Which cut layout is wanted. A line or sheet that is no longer there falls back on the first. */
export interface CutWish {
  /** Line of the bill; empty for the first that is cut. */
  readonly line: string;
  /** From 0. */
  readonly sheet: number;
  /** The saw's cuts are drawn and listed. */
  readonly cuts: boolean;
}

/** What a line would come to on one of its stocks alone. */
export interface CutOther {
  readonly stock: string;
  readonly words: string;
}

/** One sheet, one length of cloth, or the lengths of a line, ready to draw. */
export interface CutView {
  /** What is shown in fact. */
  readonly wish: CutWish;
  readonly lines: readonly PanelChoice[];
  readonly sheets: readonly PanelChoice[];
  readonly title: string;
  /** Why there is no picture; empty where there is one. */
  readonly message: string;
  /** How many, how well used, what it costs, how few there could be. */
  readonly facts: readonly string[];
  /** Where each part lies, and the cuts in their order. */
  readonly words: readonly string[];
  readonly drawing: PictureView | undefined;
  /** Rows that marks stand for, by `part/base`, in words. */
  readonly rows: Readonly<Record<string, string>>;
  /** Its parts can be locked where they lie. */
  readonly lockable: boolean;
  /** Rows whose pieces are locked on this sheet, by `part/base`. */
  readonly locked: readonly string[];
  readonly settling: boolean;
  /** By what name the work that is told of is about this layout. */
  readonly about: string;
}
