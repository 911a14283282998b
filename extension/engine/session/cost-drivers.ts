import type { Edit } from '../job/source.ts';
import { plain, sameDimension } from '../units/dimension.ts';
import type { Quantity, UnitSettings } from '../units/quantity.ts';
import { unitOf } from '../units/unit-words.ts';
import type { AnsweredCell, AnsweredRow } from '../workbook/answers.ts';
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

function candidates({ shown, workbook }: Snapshot): readonly Candidate[] {
  return tables.flatMap((table) =>
    (shown.tables.get(table) ?? []).flatMap((source) => {
      const row = workbook
        .rows(table)
        .find(({ id, occurrence }) => id === source.id && occurrence === source.occurrence);
      if (row === undefined || row.broken) return [];
      return [...new Set([...source.cells.keys(), ...(ownRates[table] ?? [])])]
        .filter((column) => !leftOut.has(column))
        .map((column) => ({ row, cell: row.cell(column) }));
    }),
  );
}

/**
 * The cells of a job that move its price most, the strongest first: each is tried a tenth lower and a
 * tenth higher while all others stay. Typed figures, and the rates of work and charges that come from
 * the book; cells with formulas follow the cells they read.
 */
export function costDrivers(session: Session, most = 5): readonly CostDriver[] {
  const snapshot = session.snapshot();
  const { settings, price } = snapshot;
  const tried = ({ row, cell }: Candidate, share: number): number | undefined => {
    const text = movedText(cell, share, settings);
    if (text === undefined) return undefined;
    const { table, id, occurrence } = row;
    const edit: Edit = {
      kind: 'set-cell',
      row: { table, id, occurrence },
      column: cell.column,
      text,
    };
    const then = session.whatIf([edit])?.price;
    return then?.state === price.state ? then.totals.price - price.totals.price : undefined;
  };
  const size = ({ less = 0, more = 0 }: CostDriver): number =>
    Math.max(Math.abs(less), Math.abs(more));
  return candidates(snapshot)
    .filter(({ cell }) => movedText(cell, step, settings) !== undefined)
    .map((one): CostDriver => {
      const { row, cell } = one;
      const name = row.cell('name').text ?? row.id;
      return {
        table: row.table,
        id: row.id,
        occurrence: row.occurrence,
        column: cell.column,
        name,
        text: cell.text ?? '',
        less: tried(one, -step),
        more: tried(one, step),
      };
    })
    .filter((one) => size(one) > 0)
    .sort((one, two) => size(two) - size(one) || (one.id < two.id ? -1 : 1))
    .slice(0, most);
}
