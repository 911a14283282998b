import type { Task } from '../work/task.ts';
import type { Day, Moment, ShopHours, Stretch } from './calendar.ts';

/** A task laid over the shop's hours. */
export interface Laid {
  readonly task: Task;
  readonly stretches: readonly Stretch[];
  readonly from: Moment;
  readonly to: Moment;
  /** Sentences about it: a coat that has to be sanded first, a task that had to wait for the next day. */
  readonly notes: readonly string[];
}

/** A job laid over the shop's hours from its first day. */
export interface Schedule {
  readonly laid: readonly Laid[];
  readonly hours: ShopHours;
  readonly start: Day;
  readonly finish: Day;
  readonly finishAt: Moment;
  /** Days on which somebody works. */
  readonly workDays: number;
  readonly notes: readonly string[];
}

/** A schedule, or why there is none. */
export type Scheduled = { readonly ok: true; readonly schedule: Schedule } | Unscheduled;

export interface Unscheduled {
  readonly ok: false;
  readonly why: string;
}
