import type { KindGroup } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import type { Minor, Step } from '../bill.ts';

/** What a charge does with what is above it. */
export type Operation =
  | 'labour'
  /** A share on top: markup, supplies, contingency, and kinds of a shop's own. */
  | 'share'
  | 'margin'
  | 'sum'
  | 'discount'
  | 'minimum'
  | 'rounding'
  | 'tax'
  | 'deposit'
  | 'stage';

/** One row of the charges sheet with what it comes to. */
export interface Charge {
  readonly id: string;
  readonly occurrence: number;
  readonly name: string;
  readonly kind: string;
  readonly operation: Operation;
  /** What it is a share of; undefined for a sum. */
  readonly base?: Minor;
  /** What it adds to the price, below 0 where it takes off; a deposit or stage: what is due then. */
  readonly amount: Minor;
  /** Part of the amount that tax is charged on. */
  readonly taxed: Minor;
  readonly steps: readonly Step[];
  /** False where it has no figure. */
  readonly complete: boolean;
}

/** How materials enter the price: as each material's book says, all by whole packs, all by what is used. */
export type MaterialsBy = 'book' | 'packs' | 'used';

/** The price of a job: materials and work, then the charges from top to bottom. All in minor units. */
export interface Price {
  readonly currency: string;
  readonly materials: readonly { readonly group: KindGroup; readonly amount: Minor }[];
  readonly charges: readonly Charge[];
  readonly totals: {
    readonly materials: Minor;
    readonly labour: Minor;
    /** Materials, labour, supplies, contingency and fees: all but what the shop earns over them. */
    readonly cost: Minor;
    /** Before tax. */
    readonly price: Minor;
    readonly taxable: Minor;
    readonly tax: Minor;
    readonly total: Minor;
    /** price − cost. */
    readonly earned: Minor;
    /** Share of the price that is earned; 0 where there is no price. */
    readonly margin: number;
    /** Due at the end, after deposit and stages. */
    readonly balance: Minor;
  };
  /** Price before tax by each way of counting materials. */
  readonly ways: Readonly<Record<MaterialsBy, Minor>>;
  /** Labour of each task, by `id#occurrence`; adds up to the labour charges. */
  readonly labourOf: ReadonlyMap<string, Minor>;
  /** What the price lacks: nothing, charges altogether, hours, or some figures. */
  readonly state: 'whole' | 'materials-only' | 'no-labour' | 'incomplete';
  readonly problems: readonly Problem[];
}
