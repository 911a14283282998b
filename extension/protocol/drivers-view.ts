import type { PictureView } from './panel-view.ts';

/** A cell and what a tenth less and a tenth more of it do to the price. */
export interface CostDriverView {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  readonly column: string;
  /** "Labour: rate". */
  readonly name: string;
  /** What the cell says now. */
  readonly says: string;
  readonly less: string;
  readonly more: string;
}

/** The cells that move the price most, with bars of how far. */
export interface CostDriversView {
  readonly title: string;
  /** Why there are none; empty where there are. */
  readonly message: string;
  readonly drivers: readonly CostDriverView[];
  readonly drawing: PictureView | undefined;
  readonly rows: Readonly<Record<string, string>>;
}
