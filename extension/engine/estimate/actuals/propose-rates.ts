import type { Book } from '../../book/book.ts';
import type { Edit, FileReading } from '../../job/source.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { unitOf } from '../../units/unit-words.ts';
import { nameOf, quantityIn } from '../cells.ts';
import { actualsOf, type ActualGround, type TaskActual } from './actuals.ts';

/** A figure of the shop book that jobs say otherwise, with what speaks for it. */
export interface RateProposal {
  readonly table: 'kind' | 'material';
  readonly id: string;
  readonly name: string;
  readonly column: 'default.rate' | 'default.minutes' | 'waste';
  /** As it stands; empty where the book says nothing. */
  readonly now: string;
  /** Median of the jobs. */
  readonly then: string;
  readonly jobs: number;
  readonly low: string;
  readonly high: string;
}

export interface ProposedRates {
  readonly proposals: readonly RateProposal[];
  /** Sentences on what is left as it is, and why. */
  readonly left: readonly string[];
}

/** Jobs that must say the same figure before one is proposed: two can be far off together. */
const fewestJobs = 3;

/** Figures that jobs say of one cell of the book; one a job. */
interface Seen {
  readonly table: RateProposal['table'];
  readonly id: string;
  readonly column: RateProposal['column'];
  readonly name: string;
  readonly unit: string;
  readonly values: readonly number[];
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((one, two) => one - two);
  const [low = 0, high = low] = [
    sorted[Math.floor((sorted.length - 1) / 2)],
    sorted[Math.floor(sorted.length / 2)],
  ];
  return (low + high) / 2;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Unit a text is written in: `min/sqft` of `10 min/sqft`. */
function writtenIn(text: string | undefined): string {
  return /^[^A-Za-z%=]*([A-Za-z%]\S*)$/.exec(text?.trim() ?? '')?.[1] ?? '';
}

type Told = Omit<Seen, 'values'> & { readonly value: number };

/** Time that the first panel took, in min; undefined where it cannot be told apart from set-up. */
function firstTook({ task, estimated, actual }: TaskActual): number | undefined {
  const [planned, taken] = [estimated - task.setup, actual - task.setup];
  return task.waits || planned <= 0 || taken <= 0 ? undefined : (task.each * taken) / planned;
}

/** Rate, or time of one panel, that a task shows. */
function toldByTask(one: TaskActual, { settings, book }: RatedJob): Told | undefined {
  const { task, row } = one;
  const kind = book.kinds.get(task.kind);
  const first = firstTook(one);
  if (kind === undefined || first === undefined) return undefined;
  const said = { table: 'kind', id: kind.id, name: kind.name } as const;
  if (task.steps[0]?.row?.column === 'minutes') {
    return { ...said, column: 'default.minutes', unit: 'min', value: first };
  }
  const rate = quantityIn(row, 'rate');
  const usual = task.range?.likely ?? task.each;
  const unit = writtenIn(kind.defaults.get('rate')) || writtenIn(row.cell('rate').text);
  if (rate.state !== 'value' || usual <= 0 || unitOf(unit, settings) === undefined)
    return undefined;
  return { ...said, column: 'default.rate', unit, value: (rate.value.base * first) / usual };
}

/** Waste of each material that a job shows, over all rows that say what was used. */
function toldByMaterials(job: RatedJob): readonly Told[] {
  const sums = new Map<string, { used: number; bare: number }>();
  for (const { need, used, bare } of actualsOf(job).materials) {
    const sum = sums.get(need.material) ?? { used: 0, bare: 0 };
    sums.set(need.material, { used: sum.used + used, bare: sum.bare + bare });
  }
  return [...sums].flatMap(([id, { used, bare }]): readonly Told[] => {
    const row = job.workbook.row('material', id);
    if (row === undefined || bare <= 0) return [];
    const value = Math.max(0, used / bare - 1);
    return [{ table: 'material', id, column: 'waste', name: nameOf(row), unit: '%', value }];
  });
}

/** A job with the book it was worked out on. */
export interface RatedJob extends ActualGround {
  readonly book: Book;
}

function keyOf({ table, id, column, unit }: Told): string {
  return `${table} ${id} ${column} ${unit}`;
}

function seenIn(jobs: readonly RatedJob[]): readonly Seen[] {
  const all = new Map<string, Seen>();
  for (const job of jobs) {
    const own = new Map<string, Told[]>();
    const byTasks = actualsOf(job).tasks.flatMap((one) => toldByTask(one, job) ?? []);
    for (const told of [...byTasks, ...toldByMaterials(job)]) {
      own.set(keyOf(told), [...(own.get(keyOf(told)) ?? []), told]);
    }
    for (const [key, told] of own) {
      const [first] = told;
      if (first === undefined) continue;
      const value = mean(told.map((one) => one.value));
      const { table, id, column, name, unit } = first;
      all.set(key, {
        table,
        id,
        column,
        name,
        unit,
        values: [...(all.get(key)?.values ?? []), value],
      });
    }
  }
  return [...all.values()];
}

function figureText(base: number, unit: string, settings: UnitSettings): string {
  const factor = unitOf(unit, settings)?.factor ?? 1;
  return `${String(Number((base / factor).toPrecision(3)))} ${unit}`;
}

function nowOf({ table, id, column }: Seen, book: Book): string {
  if (table === 'material') return book.materials.get(id)?.cells.get('waste') ?? '';
  return book.kinds.get(id)?.defaults.get(column.replace('default.', '')) ?? '';
}

function jobsText(count: number): string {
  return count === 1 ? '1 job says' : `${String(count)} jobs say`;
}

/**
 * Rates and wastes that finished jobs speak for: of each kind of work and each material the median over
 * the jobs (one figure a job), with the lowest and highest. Fewer than three jobs are told and change
 * nothing.
 */
export function proposeRates(jobs: readonly RatedJob[], bookFile: FileReading): ProposedRates {
  const [first] = jobs;
  const seen = seenIn(jobs);
  if (first === undefined || seen.length === 0) {
    const left = 'No job says what it took: fill in “time taken” of tasks and “used” of parts.';
    return { proposals: [], left: [left] };
  }
  const { settings, book } = first;
  const owned = new Set((bookFile.tables.get('material') ?? []).map(({ id }) => id));
  const proposals: RateProposal[] = [];
  const left: string[] = [];
  for (const one of seen) {
    const { table, id, column, name, unit, values } = one;
    const count = values.length;
    const what = column === 'waste' ? `of ${name} was used` : `“${name}” took`;
    if (table === 'material' && !owned.has(id)) {
      left.push(`${name} is not a material of this book, so its waste stays as it is.`);
    } else if (count < fewestJobs) {
      left.push(`Only ${jobsText(count)} how much ${what}; ${String(fewestJobs)} are needed.`);
    } else {
      const text = (value: number): string => figureText(value, unit, settings);
      const then = text(median(values));
      const [low, high] = [text(Math.min(...values)), text(Math.max(...values))];
      const now = nowOf(one, book);
      if (now === then) left.push(`“${name}” stays at ${now}: ${jobsText(count)} the same.`);
      else proposals.push({ table, id, name, column, now, then, jobs: count, low, high });
    }
  }
  return { proposals, left };
}

/** What speaks for a proposal, in a sentence: `median of 4 jobs, 8 min/sqft to 14 min/sqft`. */
export function evidenceWords({ jobs, low, high }: RateProposal): string {
  const range = low === high ? `all ${low}` : `${low} to ${high}`;
  return `median of ${String(jobs)} jobs, ${range}`;
}

function sourceOf(proposal: RateProposal): string {
  return `timed by this shop: ${evidenceWords(proposal)}`;
}

/** The edits of the book's file that take the proposals over, with where each figure is from. */
export function rateEdits(
  proposals: readonly RateProposal[],
  bookFile: FileReading,
): readonly Edit[] {
  const written = new Set<string>();
  return proposals.flatMap((proposal): readonly Edit[] => {
    const { table, id, column, then } = proposal;
    const stands = (bookFile.tables.get(table) ?? []).some((row) => row.id === id);
    const key = `${table} ${id}`;
    if (!stands && !written.has(key)) {
      written.add(key);
      return [
        { kind: 'insert-row', table, id, cells: { [column]: then, source: sourceOf(proposal) } },
      ];
    }
    const row = { table, id };
    const figure: Edit = { kind: 'set-cell', row, column, text: then };
    // A material's source is of its price and sheet; only a kind's is of its rate.
    if (table === 'material') return [figure];
    return [figure, { kind: 'set-cell', row, column: 'source', text: sourceOf(proposal) }];
  });
}
