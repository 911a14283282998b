import type { FactView } from './mix-view.ts';
import type { PictureView } from './panel-view.ts';

/** A task laid over the shop's hours; its name leads to its row. */
export interface LaidTaskView {
  readonly id: string;
  readonly occurrence: number;
  readonly name: string;
  /** "Wed 2026-11-25 8:00 to 9:15". */
  readonly when: string;
  readonly takes: string;
  /** A coat that has to be sanded first, work that is longer than a day. */
  readonly note: string;
}

/** The job laid over the shop's working hours. */
export interface ScheduleView {
  readonly title: string;
  /** Why there is no schedule; empty where there is one. */
  readonly message: string;
  readonly facts: readonly FactView[];
  readonly notes: readonly string[];
  readonly tasks: readonly LaidTaskView[];
  readonly words: readonly string[];
  readonly drawing: PictureView | undefined;
  /** Rows that bars stand for, by `task/cut`, in words. */
  readonly rows: Readonly<Record<string, string>>;
}
