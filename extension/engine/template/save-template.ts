import { applyEdits } from '../job/apply-edits.ts';
import { columnsOf } from '../job/columns.ts';
import { takeId } from '../job/fresh-id.ts';
import { readFile } from '../job/read-file.ts';
import type { Edit, FileReading, SourceRow } from '../job/source.ts';
import type { Result } from '../result.ts';
import type { AskTarget } from './ask.ts';

/** A cell that a template may ask for: a decision typed in the job, no formula. */
export interface AskableCell {
  readonly target: AskTarget;
  /** “Front door base: width”. */
  readonly name: string;
  readonly text: string;
}

/** Tables whose cells are decisions about a car, a panel or its drivers. */
const askedTables: readonly string[] = ['panel', 'driver', 'measure', 'part'];

/** Columns that say what a row is, not how large or of what. */
const fixedColumns: readonly string[] = ['kind', 'on', 'panel', 'name', 'note', 'sure', 'source'];

function cellsOfRow(row: SourceRow, reading: FileReading): readonly AskableCell[] {
  const labels = new Map(columnsOf(reading, row.table).map(({ key, label }) => [key, label]));
  const name = row.cells.get('name')?.text ?? row.id;
  return [...row.cells]
    .filter(([key, { text, form }]) => {
      if (fixedColumns.includes(key) || form === 'array' || form === 'table') return false;
      return labels.has(key) && text !== '' && !text.startsWith('=');
    })
    .map(([column, { text }]) => ({
      target: { table: row.table, id: row.id, column },
      name: row.table === 'measure' ? name : `${name}: ${labels.get(column) ?? column}`,
      text,
    }));
}

/** The cells of a job that a template made from it may ask for, sheet by sheet. */
export function askableCells(reading: FileReading): readonly AskableCell[] {
  return askedTables.flatMap((table) =>
    (reading.tables.get(table) ?? [])
      .filter(({ broken, occurrence }) => !broken && occurrence === 0)
      .flatMap((row) => cellsOfRow(row, reading)),
  );
}

/** What a person says of a template. */
export interface TemplateStart {
  readonly name: string;
  /** What it is for, in a line. */
  readonly help: string;
  readonly asks: readonly AskableCell[];
}

/** Settings that are about one job and one client. */
const jobSettings: readonly string[] = [
  'client',
  'vehicle',
  'date',
  'start',
  'valid_until',
  'book',
];

function idFrom(words: string, taken: Set<string>): string {
  const plain = words
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '_')
    .replaceAll(/^[_\d]+|_+$/g, '');
  const base = plain === '' ? 'ask' : plain.slice(0, 30).replace(/_+$/, '');
  return takeId(base, taken);
}

/** A question’s id: its row and column, which no unit and no word of formulas is. */
function askId({ target }: AskableCell, taken: Set<string>): string {
  if (!('id' in target)) return idFrom(`job_${target.column}`, taken);
  const { table, id, column } = target;
  return idFrom(table === 'measure' ? `the_${id}` : `${id}_${column}`, taken);
}

/** The word by which jobs remember their template: its name in small letters. */
export function templateWord(name: string): string {
  return idFrom(name, new Set());
}

/**
 * The text of a template from a job: without client, vehicle, days, book and frozen prices, with the
 * questions put to it. Saved again over itself it counts its version up.
 */
export function templateFromJob(
  job: string,
  start: TemplateStart,
  before?: string,
): Result<string> {
  const reading = readFile(job);
  const old = before === undefined ? undefined : readFile(before).head.get('template_version');
  const version = Math.floor(Number(old?.text ?? 0)) + 1;
  const taken = new Set((reading.tables.get('ask') ?? []).map(({ id }) => id));
  const heads: readonly Edit[] = [
    { kind: 'set-head', key: 'title', text: start.name },
    ...jobSettings
      .filter((key) => reading.head.has(key))
      .map((key) => ({ kind: 'set-head', key, text: undefined }) as const),
    { kind: 'set-head', key: 'note', text: start.help === '' ? undefined : start.help },
    { kind: 'set-head', key: 'template', text: templateWord(start.name) },
    { kind: 'set-head', key: 'template_version', text: String(version) },
  ];
  const prices = [...(reading.tables.get('price') ?? [])]
    .sort((a, b) => b.occurrence - a.occurrence)
    .map((row) => ({ kind: 'delete-row', row }) as const);
  const asks = start.asks.map((cell): Edit => {
    const { target } = cell;
    const place = 'id' in target ? `${target.id}.${target.column}` : `job.${target.column}`;
    const cells = { name: cell.name, sets: `["${place}"]` };
    return { kind: 'insert-row', table: 'ask', id: askId(cell, taken), cells };
  });
  const made = applyEdits(reading, [...heads, ...prices, ...asks]);
  return made.ok ? { ok: true, value: made.value.reading.text } : made;
}
