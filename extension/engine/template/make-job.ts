import { applyEdits } from '../job/apply-edits.ts';
import { readFile } from '../job/read-file.ts';
import { settingsOf } from '../job/settings.ts';
import type { Edit, FileReading } from '../job/source.ts';
import type { Result } from '../result.ts';
import type { UnitSystem } from '../units/quantity.ts';

/** What a person says of a job that is made from a template, before its questions are asked. */
export interface JobStart {
  readonly title: string;
  /** Day as `2026-11-25`; the engine has no clock. */
  readonly date: string;
  readonly units: UnitSystem;
  readonly currency: string;
  /** Path of the shop book, seen from the job. */
  readonly book: string | undefined;
}

/** Settings of a template that are about the template, not about a job made from it. */
const ownSettings: readonly string[] = ['client', 'vehicle', 'start', 'valid_until', 'note'];

/** Answers that a template offers in mm take the place of those in inches. */
function metricEdits(reading: FileReading): readonly Edit[] {
  return (reading.tables.get('ask') ?? []).flatMap(({ id, occurrence, cells }): readonly Edit[] => {
    const text = cells.get('start_mm')?.text;
    if (text === undefined) return [];
    const row = { table: 'ask', id, occurrence };
    return [{ kind: 'set-cell', row, column: 'start', text }];
  });
}

/**
 * The text of a job begun from a template: its rows and its questions under a head of its own. Until
 * the questions are answered (`answerEdits`) the template's own figures stand.
 */
export function jobFromTemplate(template: string, start: JobStart): Result<string> {
  const reading = readFile(template);
  const { units, currency } = settingsOf(reading.head);
  const head: readonly (readonly [string, string | undefined])[] = [
    ['title', start.title],
    ['date', start.date],
    ...(units === start.units ? [] : [['units', start.units] as const]),
    ...(currency === start.currency ? [] : [['currency', start.currency] as const]),
    ['book', start.book],
    ...ownSettings.map((key) => [key, undefined] as const),
  ];
  const edits: readonly Edit[] = [
    ...head
      .filter(([key, text]) => text !== undefined || reading.head.has(key))
      .map(([key, text]) => ({ kind: 'set-head', key, text }) as const),
    ...(start.units === 'mm' ? metricEdits(reading) : []),
  ];
  const made = applyEdits(reading, edits);
  return made.ok ? { ok: true, value: made.value.reading.text } : made;
}
