/** Marks and lists of what differs from another version. Every text is ready to show. */

/** A mark in the grid: what happened, and what was there before. */
export interface CellMark {
  readonly kind: 'added' | 'changed' | 'removed' | 'moved';
  /** "was 15 deg": said on hover and to screen readers. */
  readonly told: string;
}

/** One thing that differs, with its place where the grid has one. */
export interface CompareChange {
  readonly kind: CellMark['kind'];
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  /** Column of the sheet; empty for a row as a whole. */
  readonly column: string;
  /** False for a row that is gone: there is nowhere to go. */
  readonly there: boolean;
  /** "Midbass ring: lean". */
  readonly place: string;
  readonly before: string;
  readonly after: string;
  /** What it did: "needs 155 sqin → 172 sqin; alone +7.69 USD". */
  readonly effect: string;
  /** "was 15 deg". */
  readonly told: string;
}

/** A job held against another version of it. */
export interface CompareView {
  /** What it is held against: "HEAD", "old-door.paneljob". */
  readonly against: string;
  /** A sentence where something is missing or not settled; empty otherwise. */
  readonly note: string;
  readonly figures: readonly {
    readonly label: string;
    readonly before: string;
    readonly after: string;
    readonly change: string;
  }[];
  readonly changes: readonly CompareChange[];
  /** Rows that follow without being touched, a line each. */
  readonly followers: readonly string[];
}
