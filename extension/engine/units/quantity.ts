import type { Dimension } from './dimension.ts';

/** A number in base units (mm, g, min, °C, currency; radians for angles) with its dimension. */
export interface Quantity {
  readonly base: number;
  readonly dimension: Dimension;
}

/** The job's unit system: what bare numbers are completed with and lengths are shown in. */
export type UnitSystem = 'in' | 'mm';

/** What reading and showing need to know of the job. */
export interface UnitSettings {
  readonly units: UnitSystem;
  /** Currency code such as USD; the only one a job may use. */
  readonly currency: string;
  /** Denominator lengths in inches are shown to; 16 unless told. */
  readonly fraction?: 16 | 32;
}
