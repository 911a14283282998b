import { shapeInWords } from '../../geometry/shape-in-words.ts';
import { nameOf, shownCell } from '../../estimate/cells.ts';
import type { CellChange, JobComparison, RowChange } from '../../sharing/compare.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import type { PaperGround } from './paper.ts';

/** Who a change order is printed for: the client's copy shows no cost and no hour. */
export type OrderCopy = 'client' | 'shop';

/** An agreed state of a job, what it is now, and what differs. */
export interface ChangedJob {
  readonly before: PaperGround;
  readonly after: PaperGround;
  readonly compared: JobComparison;
}

interface RowPlace {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
}

/** Columns that a client can see or feel, with what they are called in a sentence. */
const felt: Readonly<Record<string, string>> = {
  name: 'name',
  material: 'material',
  driver: 'driver',
  shape: 'shape',
  size: 'size',
  length: 'length',
  width: 'width',
  thickness: 'thickness',
  depth: 'depth',
  tilt: 'lean',
  turn: 'direction of the lean',
  hand: 'side',
  hands: 'sides made:',
  count: 'number',
  qty: 'pieces',
  frame: 'frame',
  cutout: 'cut-out',
  supply: 'who brings it',
};

/** Columns that only the shop reads. */
const ofShop: Readonly<Record<string, string>> = {
  layers: 'layers',
  use: 'amount in one piece',
  build: 'way of building',
  spacing: 'spacing',
  minutes: 'time',
  rate: 'rate',
  basis: 'basis',
  people: 'people',
  percent: 'percent',
};

const feltTables = ['panel', 'driver', 'part'];

function rowIn({ workbook }: PaperGround, place: RowPlace): AnsweredRow | undefined {
  return workbook
    .rows(place.table)
    .find(({ id, occurrence }) => id === place.id && occurrence === place.occurrence);
}

function former({ table, id, formerId = id, formerOccurrence }: RowChange): RowPlace {
  return { table, id: formerId, occurrence: formerOccurrence };
}

/** A cell as it is said: a material, kind or driver by its name. */
function said(ground: PaperGround, row: AnsweredRow | undefined, column: string): string {
  if (row === undefined) return '';
  const cell = row.cell(column);
  const { result } = cell;
  if (result.state === 'value' && result.value.kind === 'link') {
    const table = column === 'material' ? 'material' : column;
    const linked = ground.workbook.row(table, result.value.id);
    return linked === undefined ? result.value.id : nameOf(linked);
  }
  if (result.state === 'value' && result.value.kind === 'shape')
    return shapeInWords(result.value.shape, ground.settings);
  return shownCell(cell, ground.settings);
}

function materialWords(ground: PaperGround, row: AnsweredRow): string {
  const material = said(ground, row, 'material');
  return material === '' || row.table !== 'part' ? '' : `, ${material}`;
}

function changeWords(words: string, before: string, after: string): string {
  if (after === '') return `${words} as usual, was ${before}`;
  return before === '' ? `${words} ${after}` : `${words} ${after}, was ${before}`;
}

function cellWords(job: ChangedJob, row: RowChange, cell: CellChange, copy: OrderCopy): string {
  const { column } = cell;
  const words = felt[column] ?? (copy === 'shop' ? ofShop[column] : undefined);
  if (words === undefined || column === 'name') return '';
  const before = said(job.before, rowIn(job.before, former(row)), column);
  const after = said(job.after, rowIn(job.after, row), column);
  return before === after ? '' : changeWords(words, before, after);
}

/** Rows of the group that keeps the shop going are no client's business. */
function isFelt(ground: PaperGround, row: AnsweredRow): boolean {
  if (!feltTables.includes(row.table)) return false;
  if (row.table !== 'part') return true;
  return row.kind === 'extra' || ground.book.kinds.get(row.kind)?.group !== 'shop';
}

function keptLine(job: ChangedJob, row: RowChange, copy: OrderCopy): string {
  const now = rowIn(job.after, row);
  const was = rowIn(job.before, former(row));
  if (now === undefined) return '';
  const words = row.cells
    .map((cell) => cellWords(job, row, cell, copy))
    .filter((one) => one !== '');
  const [name, before] = [nameOf(now), was === undefined ? '' : nameOf(was)];
  const named = row.cells.some(({ column }) => column === 'name') && before !== name;
  if (!named) return words.length === 0 ? '' : `${name}: ${words.join('; ')}.`;
  const rest = words.length === 0 ? '' : `: ${words.join('; ')}`;
  return `${name} in place of ${before}${rest}.`;
}

function rowLine(job: ChangedJob, row: RowChange, copy: OrderCopy): string {
  const gone = row.kind === 'removed';
  const ground = gone ? job.before : job.after;
  const found = rowIn(ground, gone ? former(row) : row);
  if (found === undefined || found.broken) return '';
  const shopOnly = row.table === 'task' && copy === 'shop';
  if (!shopOnly && !(isFelt(ground, found) || (copy === 'shop' && row.table === 'part'))) return '';
  if (row.kind === 'kept') return keptLine(job, row, copy);
  const words = `${nameOf(found)}${materialWords(ground, found)}`;
  return gone ? `Left out: ${words}.` : `Added: ${words}.`;
}

const headWords: Readonly<Record<string, string>> = {
  vehicle: 'Vehicle',
  scope: 'What is done',
  exclusions: 'What is not included',
  terms: 'Terms',
};

function settingLine({ column, before, after }: CellChange): string {
  const words = headWords[column];
  if (words === undefined) return '';
  if (after === undefined) return `${words}: no longer said (${before ?? ''}).`;
  return before === undefined ? `${words}: ${after}.` : `${words}: ${after} (was: ${before}).`;
}

/**
 * What changed, in words a client understands: panels, drivers and parts that came and went, and what
 * can be seen or felt of those that stayed. The shop's copy tells its own work too.
 */
export function changedScope(job: ChangedJob, copy: OrderCopy): readonly string[] {
  const { settings, rows } = job.compared;
  return [...settings.map(settingLine), ...rows.map((row) => rowLine(job, row, copy))].filter(
    (line) => line !== '',
  );
}

/** True where rows changed that the copy does not name. */
export function changedBeside(job: ChangedJob, copy: OrderCopy): boolean {
  return job.compared.rows.length + job.compared.settings.length > changedScope(job, copy).length;
}
