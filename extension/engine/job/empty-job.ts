import type { UnitSystem } from '../units/quantity.ts';
import { quotedText } from './write-value.ts';

/** What a new job starts with. */
export interface EmptyJob {
  readonly title: string;
  readonly units: UnitSystem;
  /** Currency code such as USD. */
  readonly currency: string;
  /** Path of the shop book, seen from the job file. */
  readonly book?: string;
  /** Day as `2026-11-25`; the engine has no clock. */
  readonly date: string;
}

/** The text of a job file without rows, in the current format. */
export function writeEmptyJob(job: EmptyJob): string {
  const isDay = /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/.test(job.date);
  const lines = [
    'format = 1',
    '',
    '[job]',
    `title = ${quotedText(job.title)}`,
    '',
    `date = ${isDay ? job.date : quotedText(job.date)}`,
    '',
    `units = ${quotedText(job.units)}`,
    `currency = ${quotedText(job.currency)}`,
    ...(job.book === undefined ? [] : ['', `book = ${quotedText(job.book)}`]),
  ];
  return `${lines.join('\n')}\n`;
}
