/** A cell of a sheet. */
export interface CellAddress {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  readonly column: string;
}

/** A row of a sheet; of two rows with one id the second has occurrence 1. */
export interface RowAddress {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
}
