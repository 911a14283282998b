import { settingsOf } from '../job/settings.ts';
import type { Edit, FileReading, RowRef } from '../job/source.ts';
import { failed, ok, type Result } from '../result.ts';
import type { Ask, AskAnswers, AskTarget } from './ask.ts';
import { asksOf, rowCalled, textAt } from './read-asks.ts';
import { settledAsk } from './settle-ask.ts';
import { templateProblem } from './template-problems.ts';

function written(target: AskTarget, answer: string): Edit {
  const text = answer === '' ? undefined : answer;
  if (!('id' in target)) return { kind: 'set-head', key: target.column, text };
  const { table, id, column } = target;
  return { kind: 'set-cell', row: { table, id }, column, text };
}

function rowsToGo(asks: readonly Ask[], texts: ReadonlyMap<string, string>): ReadonlySet<string> {
  return new Set(asks.flatMap(({ id, keeps }) => (texts.get(id) === 'no' ? keeps : [])));
}

function unknownAnswer(asks: readonly Ask[], answers: AskAnswers): Result<never> | undefined {
  const id = Object.keys(answers).find((key) => !asks.some((ask) => ask.id === key));
  if (id === undefined) return undefined;
  const known = asks.map((ask) => ask.id).join(', ');
  return failed(templateProblem('ask-not-there', { id, known }));
}

/**
 * The edits that write answers into a job made from a template: each into its cells, rows that are not
 * wanted taken out, and then the questions themselves. An answer left out takes what is offered.
 *
 * @returns the edits, or the first thing wrong with the answers (`askFaults` has all of them)
 */
export function answerEdits(reading: FileReading, answers: AskAnswers): Result<readonly Edit[]> {
  const asks = asksOf(reading);
  const settings = settingsOf(reading.head);
  const unknown = unknownAnswer(asks, answers);
  if (unknown !== undefined) return unknown;
  const texts = new Map<string, string>();
  for (const ask of asks) {
    const settled = settledAsk(ask, answers[ask.id] ?? ask.start, settings);
    if (!settled.ok) return settled;
    texts.set(ask.id, settled.value);
  }
  const gone = rowsToGo(asks, texts);
  const sets = asks.flatMap(({ id, sets }) =>
    sets
      .filter((target) => !('id' in target && gone.has(target.id)))
      .filter((target) => textAt(target, reading) !== texts.get(id))
      .map((target) => written(target, texts.get(id) ?? '')),
  );
  const rows: readonly RowRef[] = [
    ...[...gone].flatMap((id) => {
      const row = rowCalled(id, reading);
      return row === undefined ? [] : [{ table: row.table, id }];
    }),
    // Of rows with one id the last goes first, so that each is found.
    ...[...(reading.tables.get('ask') ?? [])]
      .sort((a, b) => b.occurrence - a.occurrence)
      .map(({ table, id, occurrence }) => ({ table, id, occurrence })),
  ];
  return ok([...sets, ...rows.map((row) => ({ kind: 'delete-row', row }) as const)]);
}
