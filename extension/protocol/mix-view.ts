/** A label with what it says. */
export interface FactView {
  readonly key: string;
  readonly label: string;
  readonly value: string;
}

/** One way to measure the catalyst of a pot. */
export interface MeasureView {
  readonly key: string;
  /** "4 g on the scale". */
  readonly amount: string;
  /** "makes 1.98 %". */
  readonly makes: string;
  /** "1 % too little". */
  readonly error: string;
}

/** A coat of mixed resin; its name leads to its row. */
export interface MixCoatView {
  readonly id: string;
  readonly occurrence: number;
  readonly name: string;
  /** "4 pots, 2 a panel". */
  readonly pots: string;
  /** Resin and catalyst of one pot: name, amount, and the amount in another measure. */
  readonly amounts: readonly {
    readonly key: string;
    readonly what: string;
    readonly much: string;
    readonly also: string;
  }[];
  readonly exactly: string;
  readonly measures: readonly MeasureView[];
  readonly life: string;
  readonly warnings: readonly string[];
}

/** The mixing of the job, ready to show. */
export interface MixView {
  /** Why there is no plan; empty where there is one. */
  readonly message: string;
  readonly facts: readonly FactView[];
  /** A gel test of this shop stands behind the pot lives. */
  readonly anchored: boolean;
  readonly coats: readonly MixCoatView[];
  /** Coats that cannot be planned, with the reason. */
  readonly open: readonly {
    readonly id: string;
    readonly occurrence: number;
    readonly name: string;
    readonly why: string;
  }[];
  readonly total: string;
  readonly caution: string;
}
