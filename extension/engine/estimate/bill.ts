import type { HeavyQuestion } from '../formula/catalogue.ts';
import type { Problem } from '../problems.ts';
import type { Quantity } from '../units/quantity.ts';
import type { KindGroup } from '../book/book.ts';
import type { Laid } from './cut-layout.ts';
import type { CutOutline } from './cut-outline.ts';
import type { LeaningStrip } from './ring-pair.ts';

/** Money in whole minor units (cents) of the job's currency. */
export type Minor = number;

/** An amount with the unit it is shown in: a unit word, or a material's count word (each, can…). */
export interface Amount extends Quantity {
  readonly unit: string;
  /** True when `unit` is a count word: a label without dimension. */
  readonly count: boolean;
}

/** One step of the working behind a figure, ready to show: `use 8.4 floz × 2 panels × 1.15 waste`. */
export interface Step {
  readonly text: string;
  readonly row?: { readonly table: string; readonly id: string; readonly column?: string };
}

/** What one row (or one of its draws) asks of one material, for the whole job. */
export interface RowNeed {
  readonly table: string;
  readonly row: string;
  readonly occurrence: number;
  /** Name of the draw, or empty for the row's own material. */
  readonly draw: string;
  readonly material: string;
  readonly group: KindGroup;
  /** Amount of one piece. */
  readonly use: Amount;
  readonly pieces: number;
  readonly panels: number;
  /** Share, 0.1 for 10 %. */
  readonly waste: number;
  /** use × pieces × panels × (1 + waste), in the dimension the material is bought in. */
  readonly need: Amount;
  /** Blanks to lay out, in mm, where the row takes blanks. */
  readonly blank?: { readonly length: number; readonly width: number; readonly count: number };
  /** What the blank is cut to, where the material is nested by outlines. */
  readonly outline?: CutOutline;
  /** What it is bent from, where two such strips may lie head to tail. */
  readonly leaning?: LeaningStrip;
  /** This row's share of the line's charge and buy. */
  readonly charge: Minor;
  readonly buy: Minor;
  readonly steps: readonly Step[];
}

export interface BoughtPack {
  readonly id: string;
  /** Packs, or steps of goods that are cut to measure. */
  readonly count: number;
  readonly holds: Amount;
  /** Goods cut to measure: the whole amount, as it is asked for at the counter (1 yd). */
  readonly cut?: Amount;
  /** Goods sold as sheets: size of one in mm, and how many a pack holds. */
  readonly sheet?: { readonly length: number; readonly width: number; readonly number: number };
  readonly price: Minor;
  /** Day from which the job holds this price; empty where it does not say. */
  readonly held?: string;
  /** Taken from the shelf: it is charged, but no money goes out for it now. */
  readonly shelf?: boolean;
}

/** One line of the bill: everything the job takes of one material, or one driver, or one extra. */
export interface BillLine {
  /**
   * Material id; `driver/mid` and `part/freight` for lines of a driver and of a row with its own price;
   * `supplier/mill` for what is paid on top of a small order.
   */
  readonly id: string;
  readonly name: string;
  readonly source: {
    readonly table: 'material' | 'driver' | 'part' | 'supplier';
    readonly id: string;
  };
  readonly group: KindGroup;
  readonly need?: Amount;
  readonly packs: readonly BoughtPack[];
  /** Money out now, whole packs; nothing for what is on the shelf. */
  readonly buy: Minor;
  /** Money in the price: packs or value used, as the material's `charge` says. */
  readonly charge: Minor;
  readonly charges: 'packs' | 'used';
  readonly left?: Amount;
  readonly leftValue: Minor;
  /** `≈` while no layout has settled. */
  readonly approximate: boolean;
  /** How its parts are cut, where they are cut from whole stock. */
  readonly laid?: Laid;
  /** Sentence such as "tight, 0.1 % short". */
  readonly tight?: string;
  /** What rows ask for and bear; shared out when it is first read. */
  readonly rows: readonly RowNeed[];
  /** The same before money is shared out, where that waits. */
  readonly asked?: readonly Omit<RowNeed, 'charge' | 'buy'>[];
  readonly steps: readonly Step[];
  /** False when a need or price is missing: the line is not (wholly) in the totals. */
  readonly complete: boolean;
}

export interface GroupTotal {
  readonly group: KindGroup;
  readonly buy: Minor;
  readonly charge: Minor;
}

export interface Bill {
  readonly currency: string;
  readonly lines: readonly BillLine[];
  readonly groups: readonly GroupTotal[];
  readonly totals: {
    readonly buy: Minor;
    readonly charge: Minor;
    /** Lines of materials and drivers that are missing something. */
    readonly incomplete: number;
    readonly complete: boolean;
    /** Panels the job makes. */
    readonly panels: number;
  };
  /** Layouts that are being looked for; until they come, lines are settling. */
  readonly waits: readonly HeavyQuestion[];
  readonly problems: readonly Problem[];
}
