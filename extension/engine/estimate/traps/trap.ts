import type { Book, Kind } from '../../book/book.ts';
import type { Problem } from '../../problems.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';

/** A formula that somebody typed into a cell. */
export interface TypedFormula {
  readonly column: string;
  readonly text: string;
}

/** What a trap may look at besides its row; what it looks at is remembered. */
export interface TrapView {
  /** The formulas that somebody typed into the trap's own row. */
  readonly formulas: () => readonly TypedFormula[];
  readonly row: (table: string, id: string) => AnsweredRow | undefined;
  readonly kind: (row: AnsweredRow) => Kind | undefined;
  readonly book: Book;
  readonly settings: UnitSettings;
}

/**
 * A mistake that the trade knows by name: something that calculates and is most often not meant. A new
 * trap is one entry in all-traps.ts and its sentence in trap-problems.ts.
 */
export interface Trap {
  /** Tables whose rows it looks at. */
  readonly tables: readonly string[];
  readonly find: (row: AnsweredRow, view: TrapView) => readonly Problem[];
}
