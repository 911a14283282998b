import type { ComparedCell, ComparedJobs, ComparedRow } from '../engine/index.ts';
import { steady } from './steady.ts';

function money(minor: number | undefined, currency: string): object | null {
  return minor === undefined ? null : { minor, currency };
}

function cellJson(cell: ComparedCell, { currencies }: ComparedJobs): object {
  return {
    change: cell.kind,
    column: cell.column,
    before: cell.before ?? null,
    after: cell.after ?? null,
    shownBefore: cell.shownBefore,
    shownAfter: cell.shownAfter,
    price: money(cell.own, currencies.before),
  };
}

function figuresJson({ need, charge, minutes }: ComparedRow['before'], currency: string): object {
  const time = minutes === undefined ? null : steady(minutes);
  return { need: need ?? null, charge: money(charge, currency), minutes: time };
}

function rowJson(row: ComparedRow, found: ComparedJobs): object {
  const { before, after } = found.currencies;
  return {
    change: row.kind,
    table: row.table,
    id: row.id,
    occurrence: row.occurrence,
    formerId: row.formerId ?? null,
    name: row.name,
    moved: row.moved,
    broken: row.broken,
    cells: row.cells.map((cell) => cellJson(cell, found)),
    before: figuresJson(row.before, before),
    after: figuresJson(row.after, after),
    price: money(row.own, before),
  };
}

/** What `diff --json` prints. */
export function diffJson(
  found: ComparedJobs,
  names: { readonly before: string; readonly after: string; readonly booksDiffer: boolean },
): object {
  const { currencies } = found;
  return {
    format: 1,
    before: names.before,
    after: names.after,
    same: found.same,
    booksDiffer: names.booksDiffer,
    settings: found.settings.map((cell) => cellJson(cell, found)),
    rows: found.rows.map((row) => rowJson(row, found)),
    follow: found.followers.map((row) => rowJson(row, found)),
    materials: found.materials.map(({ id, name, need, charge }) => ({
      id,
      name,
      before: { need: need.before ?? null, charge: money(charge.before, currencies.before) },
      after: { need: need.after ?? null, charge: money(charge.after, currencies.after) },
    })),
    figures: found.figures.map(({ key, measure, before, after }) => ({
      key,
      before: measure === 'time' ? steady(before) : money(before, currencies.before),
      after: measure === 'time' ? steady(after) : money(after, currencies.after),
    })),
  };
}
