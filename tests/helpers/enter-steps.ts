import type { Kit, KitQuestion } from '../../extension/engine/book/book.ts';
import { readBook } from '../../extension/engine/book/read-book.ts';
import { kitRows } from '../../extension/engine/book/kit-rows.ts';
import { applyEdits } from '../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../extension/engine/job/read-file.ts';
import type { Edit, FileReading } from '../../extension/engine/job/source.ts';
import type { UnitSettings } from '../../extension/engine/units/quantity.ts';
import type { EntryStep } from '../samples/front-pair-entries.ts';

function settingsOf(job: FileReading): UnitSettings {
  return {
    units: job.head.get('units')?.text === 'mm' ? 'mm' : 'in',
    currency: job.head.get('currency')?.text ?? 'USD',
  };
}

/** The last row that fits, as the grid offers it. */
export function offeredRow(question: KitQuestion, job: FileReading): string {
  const rows = ['panel', 'driver', 'measure', 'part'].flatMap(
    (table) => job.tables.get(table) ?? [],
  );
  return (
    rows.findLast(({ table, cells }) => {
      const kind = cells.get('kind')?.text ?? '';
      return question.of.includes(table) || question.of.includes(kind);
    })?.id ?? ''
  );
}

function kitEdits(kit: Kit, answers: Readonly<Record<string, string>>, job: FileReading): Edit[] {
  const offered = kit.questions
    .filter(({ type, start }) => type === 'row' && start === '')
    .map((question) => [question.key, offeredRow(question, job)] as const);
  const ids = [...job.tables.values()].flatMap((rows) => rows.map(({ id }) => id));
  const rows = kitRows(
    kit,
    { ...Object.fromEntries(offered), ...answers },
    { taken: new Set(ids), settings: settingsOf(job) },
  );
  if (!rows.ok) throw new Error(`${kit.id}: ${rows.problem.message}`);
  return rows.value.map((row) => ({ kind: 'insert-row', ...row }));
}

function editsOf(step: EntryStep, job: FileReading): Edit[] {
  if (step.do === 'head') return [{ kind: 'set-head', key: step.key, text: step.text }];
  if (step.do === 'cell') {
    const row = { table: step.table, id: step.row };
    return [{ kind: 'set-cell', row, column: step.column, text: step.text }];
  }
  const { kits } = readBook({ job: job.tables });
  const kit = kits.find(({ id }) => id === step.kit);
  if (kit === undefined) throw new Error(`There is no kit ${step.kit}`);
  return kitEdits(kit, step.answers, job);
}

/** The job's text after a person has done these steps, one after another. */
export function enterSteps(start: string, steps: readonly EntryStep[]): string {
  return steps.reduce((text, step) => {
    const job = readFile(text);
    const applied = applyEdits(job, editsOf(step, job));
    if (!applied.ok) throw new Error(applied.problem.message);
    return applied.value.reading.text;
  }, start);
}
