import type { Edit, FileReading, SourceRow } from '../../job/source.ts';
import { problemMaker, type Problem } from '../../problems.ts';
import { columnOfTarget, targetOf, textAt } from '../../template/read-asks.ts';

/** One cell that an option says otherwise. */
export interface OptionCell {
  /** `door_vinyl.material`, or `job.temperature`. */
  readonly cell: string;
  /** What stands there now; empty where it is blank. */
  readonly now: string;
  /** What the option puts there; empty clears it. */
  readonly then: string;
}

/** A named alternative of some cells of a job: a better driver, cloth against vinyl. */
export interface JobOption {
  readonly id: string;
  readonly occurrence: number;
  readonly name: string;
  readonly note: string;
  readonly cells: readonly OptionCell[];
  /** What it changes in the job. */
  readonly edits: readonly Edit[];
}

const optionProblem = problemMaker({
  'option-cell-unknown':
    'The option “{name}” sets {cell}, but there is no such cell; write set.ROW.COLUMN with the id of a row, or set.job.SETTING.',
  'option-empty':
    'The option “{name}” changes nothing; write a line such as set.ROW.COLUMN = "…" into it.',
});

const prefix = 'set.';

function rowsOf(reading: FileReading): readonly SourceRow[] {
  return (reading.tables.get('option') ?? []).filter(({ broken }) => !broken);
}

function nameOf(row: SourceRow): string {
  return row.cells.get('name')?.text ?? row.id.replaceAll('_', ' ');
}

function editOf(cell: string, then: string, reading: FileReading): Edit | undefined {
  const target = targetOf(cell, reading);
  if (target === undefined || columnOfTarget(target, reading) === undefined) return undefined;
  const text = then === '' ? undefined : then;
  const { column } = target;
  if (!('id' in target)) return { kind: 'set-head', key: column, text };
  return { kind: 'set-cell', row: { table: target.table, id: target.id }, column, text };
}

function optionFrom(row: SourceRow, reading: FileReading): JobOption {
  const cells: OptionCell[] = [];
  const edits: Edit[] = [];
  for (const [key, { text: then }] of row.cells) {
    if (!key.startsWith(prefix)) continue;
    const cell = key.slice(prefix.length);
    const target = targetOf(cell, reading);
    const edit = editOf(cell, then, reading);
    if (target === undefined || edit === undefined) continue;
    cells.push({ cell, now: textAt(target, reading), then });
    edits.push(edit);
  }
  const { id, occurrence } = row;
  return {
    id,
    occurrence,
    name: nameOf(row),
    note: row.cells.get('note')?.text ?? '',
    cells,
    edits,
  };
}

/** The options of a job, in display order. */
export function optionsOf(reading: FileReading): readonly JobOption[] {
  return rowsOf(reading).map((row) => optionFrom(row, reading));
}

/** The edits that make an option the job: its cells are written and it is an option no more. */
export function acceptOption({ id, occurrence, edits }: JobOption): readonly Edit[] {
  return [...edits, { kind: 'delete-row', row: { table: 'option', id, occurrence } }];
}

/** What is wrong with the options of a job. */
export function optionProblems(reading: FileReading): readonly Problem[] {
  return rowsOf(reading).flatMap((row) => {
    const place = { table: 'option', row: row.id, occurrence: row.occurrence };
    const name = nameOf(row);
    const keys = [...row.cells.keys()].filter((key) => key.startsWith(prefix));
    if (keys.length === 0) return [optionProblem('option-empty', { name }, { place })];
    return keys.flatMap((key) => {
      const cell = key.slice(prefix.length);
      if (editOf(cell, '', reading) !== undefined) return [];
      const at = { place: { ...place, column: key } };
      return [optionProblem('option-cell-unknown', { name, cell }, at)];
    });
  });
}
