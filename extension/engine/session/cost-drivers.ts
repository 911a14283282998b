import type { Edit } from '../job/source.ts';
import { atOnce, type Steps } from '../steps.ts';
import { plain, sameDimension } from '../units/dimension.ts';
import type { Quantity, UnitSettings } from '../units/quantity.ts';
import { unitOf } from '../units/unit-words.ts';
import type { AnsweredCell, AnsweredRow } from '../workbook/answers.ts';
import { rowKey } from './row-key.ts';
import type { Session } from './session.ts';
import type { Snapshot } from './snapshot.ts';

/** A cell and what a tenth less and a tenth more of it do to the price before tax. */
export interface CostDriver {
  readonly table: string;
  readonly id: string;
  readonly occurrence: number;
  readonly column: string;
  /** What the row is called. */
  readonly name: string;
  readonly text: string;
  /** Change of the price in minor units; undefined where the job then has no whole price. */
  readonly less: number | undefined;
  readonly more: number | undefined;
}

/** How far each cell is moved, as a share of what it says. */
const step = 0.1;

const tables = ['part', 'driver', 'measure', 'task', 'charge'] as const;

// A count or a day is not a figure that could be a tenth more.
const leftOut = new Set(['qty', 'layers', 'people', 'grit', 'order', 'learn']);

/** The figure a cell says for itself; undefined for formulas, results, texts and temperatures. */
function typedFigure(cell: AnsweredCell): Quantity | undefined {
  if (cell.formula || cell.origin === 'computed' || cell.result.state !== 'value') return undefined;
  const { value } = cell.result;
  if (value.kind !== 'quantity' || value.base === 0) return undefined;
  return value.dimension.tag === 'point' ? undefined : value;
}

/** A literal with its number moved by a share, in its own unit; undefined for what cannot be moved. */
function movedText(cell: AnsweredCell, share: number, settings: UnitSettings): string | undefined {
  const figure = typedFigure(cell);
  if (figure === undefined) return undefined;
  const moved = figure.base * (1 + share);
  const word = /^[^A-Za-z%]*([A-Za-z%][^\s]*)?$/.exec(cell.text?.trim() ?? '')?.[1] ?? '';
  const unit = unitOf(word, settings);
  if (unit !== undefined) return `${String(Number((moved / unit.factor).toPrecision(12)))} ${word}`;
  return word === '' && sameDimension(figure.dimension, plain) ? String(moved) : undefined;
}

/** Figures that the book gives and a row may give for itself. */
const ownRates: Readonly<Record<string, readonly string[]>> = {
  task: ['rate', 'minutes', 'setup'],
  charge: ['rate', 'percent'],
};

interface Candidate {
  readonly row: AnsweredRow;
  readonly cell: AnsweredCell;
}

/** A job of which cells can be tried: a session, or whoever holds one. */
export type TriedJob = Pick<Session, 'snapshot' | 'whatIf'>;

function candidates({ shown, workbook }: Snapshot): readonly Candidate[] {
  return tables.flatMap((table) => {
    const rows = new Map(workbook.rows(table).map((row) => [rowKey(row), row]));
    return (shown.tables.get(table) ?? []).flatMap((source) => {
      const row = rows.get(rowKey({ ...source, table }));
      if (row === undefined || row.broken) return [];
      return [...new Set([...source.cells.keys(), ...(ownRates[table] ?? [])])]
        .filter((column) => !leftOut.has(column))
        .map((column) => ({ row, cell: row.cell(column) }));
    });
  });
}

/**
 * The cells of a job that move its price most, the strongest first: each is tried a tenth lower and a
 * tenth higher while all others stay. Typed figures, and the rates of work and charges that come from
 * the book; cells with formulas follow the cells they read. It rests after each cell that is tried, so
 * that whoever steps it on can let typing in between; the job must not change before its end.
 */
export function* costDriverSteps(job: TriedJob, most = 5): Steps<readonly CostDriver[]> {
  const snapshot = job.snapshot();
  const { settings } = snapshot;
  const found: CostDriver[] = [];
  for (const one of candidates(snapshot)) {
    if (movedText(one.cell, step, settings) === undefined) continue;
    const { row, cell } = one;
    const { table, id, occurrence } = row;
    const tried = {
      ...{ table, id, occurrence, column: cell.column },
      name: row.cell('name').text ?? id,
      text: cell.text ?? '',
      less: priceChange(one, -step, job),
      more: priceChange(one, step, job),
    };
    if (sizeOf(tried) > 0) found.push(tried);
    yield;
  }
  return found
    .sort((one, two) => sizeOf(two) - sizeOf(one) || (one.id < two.id ? -1 : 1))
    .slice(0, most);
}

function sizeOf({ less = 0, more = 0 }: CostDriver): number {
  return Math.max(Math.abs(less), Math.abs(more));
}

/** What a cell moved by a share does to the price; undefined where the job then has no whole price. */
function priceChange({ row, cell }: Candidate, share: number, job: TriedJob): number | undefined {
  const { settings, price } = job.snapshot();
  const text = movedText(cell, share, settings);
  if (text === undefined) return undefined;
  const { table, id, occurrence } = row;
  const edit: Edit = {
    kind: 'set-cell',
    row: { table, id, occurrence },
    column: cell.column,
    text,
  };
  const then = job.whatIf([edit])?.price;
  return then?.state === price.state ? then.totals.price - price.totals.price : undefined;
}

/** The cells that move the price most, worked out in one go. */
export function costDrivers(job: TriedJob, most = 5): readonly CostDriver[] {
  return atOnce(costDriverSteps(job, most));
}
