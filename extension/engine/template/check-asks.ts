import { settingsOf } from '../job/settings.ts';
import type { FileReading, SourceRow } from '../job/source.ts';
import type { Problem } from '../problems.ts';
import type { Ask } from './ask.ts';
import { asksOf, columnOfTarget, rowCalled, targetOf } from './read-asks.ts';
import { settledAsk } from './settle-ask.ts';
import { templateProblem } from './template-problems.ts';

function cellProblems(row: SourceRow, reading: FileReading): readonly Problem[] {
  const { id, occurrence } = row;
  const place = { table: 'ask', row: id, occurrence };
  const items = (key: string): readonly string[] => row.cells.get(key)?.items ?? [];
  const [sets, keeps] = [items('sets'), items('keeps')];
  if (sets.length + keeps.length === 0) return [templateProblem('ask-empty', { id }, { place })];
  const cells = sets.flatMap((cell) => {
    const target = targetOf(cell, reading);
    if (target !== undefined && columnOfTarget(target, reading) !== undefined) return [];
    const at = { place: { ...place, column: 'sets' } };
    return [templateProblem('ask-cell-unknown', { id, cell }, at)];
  });
  const rows = keeps.flatMap((one) => {
    if (rowCalled(one, reading) !== undefined) return [];
    const at = { place: { ...place, column: 'keeps' } };
    return [templateProblem('ask-row-unknown', { id, row: one }, at)];
  });
  return [...cells, ...rows];
}

function startProblem(ask: Ask, reading: FileReading): readonly Problem[] {
  const settled = settledAsk(ask, ask.start, settingsOf(reading.head));
  if (settled.ok || ask.start === '') return [];
  const { id, start: text } = ask;
  const details = { id, text, message: settled.problem.message };
  return [templateProblem('ask-start-unfit', details, { place: { table: 'ask', row: id } })];
}

/** What is wrong with the questions of a template; of a file without questions nothing is. */
export function askProblems(reading: FileReading): readonly Problem[] {
  const rows = (reading.tables.get('ask') ?? []).filter(({ broken }) => !broken);
  if (rows.length === 0) return [];
  const faults = rows.flatMap((row) => cellProblems(row, reading));
  const asks = asksOf(reading).filter(({ sets }) => sets.length > 0);
  return [...faults, ...asks.flatMap((ask) => startProblem(ask, reading))];
}
