/** A phase or a person with its hours. */
export interface HoursTotal {
  readonly key: string;
  readonly label: string;
  readonly working: string;
  /** Empty where nothing waits. */
  readonly waiting: string;
}

/** One task of the hours pane; a click goes to its row. */
export interface HoursTask {
  readonly id: string;
  readonly occurrence: number;
  readonly name: string;
  readonly time: string;
  /** How it comes about: "2.7 sqft at 10 min/sqft, 2 panels". */
  readonly how: string;
  /** Where its rate is from, or why it has no time; empty where the shop typed it. */
  readonly note: string;
  readonly complete: boolean;
}

export interface HoursPhase extends HoursTotal {
  readonly tasks: readonly HoursTask[];
}

export interface HoursView {
  readonly phases: readonly HoursPhase[];
  readonly people: readonly HoursTotal[];
  /** "26 h 55 min of work, 6 h of waiting". */
  readonly total: string;
  readonly notes: readonly string[];
}

/** One line of the price, from materials to what is due. */
export interface PriceLine {
  readonly key: string;
  readonly label: string;
  /** "7 % of 2479.29 USD". */
  readonly detail: string;
  readonly amount: string;
  readonly look: 'part' | 'sum' | 'total' | 'due';
  /** Row to go to; empty where it has none. */
  readonly table: string;
  readonly id: string;
}

export interface PriceView {
  readonly lines: readonly PriceLine[];
  /** What the price means: margin earned, for a panel, by whole packs, by what is used. */
  readonly facts: readonly {
    readonly key: string;
    readonly label: string;
    readonly value: string;
  }[];
  readonly notes: readonly string[];
  /** Difference of the total since the file was opened; empty when there is none. */
  readonly change: string;
}

/** What the price pane shows: asked for while it is looked at. */
export interface MoneyView {
  readonly price: PriceView;
  readonly hours: HoursView;
}
