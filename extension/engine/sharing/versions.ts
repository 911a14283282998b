import type { FileReading } from '../job/source.ts';

/** The side of a merge that something comes from. */
export type Side = 'ours' | 'theirs';

/** Two versions of a job and what both came from. */
export interface Versions {
  readonly base: FileReading;
  readonly ours: FileReading;
  readonly theirs: FileReading;
  /** True where the version before is not known: then `base` is `ours`, and every difference is a choice. */
  readonly baseUnknown: boolean;
  /** True for an id that a row of any version has, or may have. */
  readonly isTaken: (id: string) => boolean;
}

export type VersionName = 'base' | Side;
