import { sameList } from '../units/same-list.ts';
import { namedRowTables } from './columns.ts';
import { displayOrder } from './display-order.ts';
import type { ParsedBlock } from './parse-block.ts';
import type { SourceRow } from './source.ts';

/** The rows of a file, by block and by table. */
export interface BuiltRows {
  /** Row of each block; undefined for blocks that are no rows. */
  readonly byBlock: readonly (SourceRow | undefined)[];
  readonly tables: ReadonlyMap<string, readonly SourceRow[]>;
  /** Rows whose id another row bears that stands before them. */
  readonly repeated: readonly SourceRow[];
}

function rowOf(block: ParsedBlock, index: number, occurrence: number): SourceRow {
  return {
    table: block.header?.name ?? '',
    id: block.id,
    occurrence,
    cells: block.cells,
    ...(block.order === undefined ? {} : { order: block.order }),
    block: index,
    broken: block.broken,
  };
}

function sameRow(row: SourceRow, made: SourceRow): boolean {
  return (
    row.cells === made.cells &&
    row.block === made.block &&
    row.occurrence === made.occurrence &&
    row.table === made.table &&
    row.id === made.id &&
    row.order === made.order &&
    row.broken === made.broken
  );
}

/** Hands out occurrences, and notes which rows bear an id that is taken. */
function rowCounter(): (row: { table: string; id: string }) => {
  occurrence: number;
  taken: boolean;
} {
  const counts = new Map<string, number>();
  const names = new Set<string>();
  return ({ table, id }) => {
    const own = `${table} ${id}`;
    const occurrence = counts.get(own) ?? 0;
    counts.set(own, occurrence + 1);
    const name = namedRowTables.includes(table) ? id : own;
    const taken = id !== '' && names.has(name);
    names.add(name);
    return { occurrence, taken };
  };
}

function tablesOf(
  inFile: ReadonlyMap<string, readonly SourceRow[]>,
  before: BuiltRows | undefined,
): ReadonlyMap<string, readonly SourceRow[]> {
  const tables = new Map<string, readonly SourceRow[]>();
  for (const [table, rows] of inFile) {
    const shown = displayOrder(rows);
    const old = before?.tables.get(table);
    tables.set(table, old !== undefined && sameList(old, shown) ? old : shown);
  }
  return tables;
}

/**
 * Makes the rows of all blocks. Rows and tables that are equal to those before the change are the
 * same objects, so that whoever watches them sees what changed.
 */
export function buildRows(parsed: readonly ParsedBlock[], before?: BuiltRows): BuiltRows {
  const byBlock: (SourceRow | undefined)[] = [];
  const inFile = new Map<string, SourceRow[]>();
  const repeated: SourceRow[] = [];
  const count = rowCounter();
  for (const [index, block] of parsed.entries()) {
    if (block.role !== 'row') {
      byBlock.push(undefined);
      continue;
    }
    const table = block.header?.name ?? '';
    const { occurrence, taken } = count({ table, id: block.id });
    const made = rowOf(block, index, occurrence);
    const old = before?.byBlock[index];
    const row = old !== undefined && sameRow(old, made) ? old : made;
    byBlock.push(row);
    const rows = inFile.get(table);
    if (rows === undefined) inFile.set(table, [row]);
    else rows.push(row);
    if (taken) repeated.push(row);
  }
  return { byBlock, tables: tablesOf(inFile, before), repeated };
}

/** True where rows of these two blocks take the same places, so that only cells differ. */
export function samePlace(a: ParsedBlock, b: ParsedBlock): boolean {
  return (
    a.role === b.role && a.header?.name === b.header?.name && a.id === b.id && a.order === b.order
  );
}

// Looks for the few that were swapped, instead of asking each of thousands.
function replaced(
  rows: readonly SourceRow[],
  swapped: ReadonlyMap<SourceRow, SourceRow>,
): readonly SourceRow[] {
  const next = rows.slice();
  for (const [old, made] of swapped) {
    const place = rows.indexOf(old);
    if (place !== -1) next[place] = made;
  }
  return next;
}

/** Rows after a change of cells alone, in the blocks from `from` up to but without `to`. */
export function replaceRows(
  before: BuiltRows,
  parsed: readonly ParsedBlock[],
  range: { readonly from: number; readonly to: number },
): BuiltRows {
  const byBlock = before.byBlock.slice();
  const swapped = new Map<SourceRow, SourceRow>();
  const touched = new Set<string>();
  for (let index = range.from; index < range.to; index++) {
    const block = parsed[index];
    const old = byBlock[index];
    if (block === undefined || old === undefined) continue;
    const made = rowOf(block, index, old.occurrence);
    if (sameRow(old, made)) continue;
    byBlock[index] = made;
    swapped.set(old, made);
    touched.add(made.table);
  }
  if (swapped.size === 0) return before;
  const current = (rows: readonly SourceRow[]): readonly SourceRow[] => replaced(rows, swapped);
  const tables = new Map(before.tables);
  for (const table of touched) tables.set(table, current(tables.get(table) ?? []));
  return { byBlock, tables, repeated: current(before.repeated) };
}
