import type { Book } from '../book/book.ts';
import type { Catalogue } from '../formula/catalogue.ts';
import type { NamedRow, Nameable, Resolved, Scope } from '../formula/scope.ts';
import type { ValueType } from '../formula/value.ts';
import type { Result } from '../result.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { ColumnTypes } from './column-types.ts';
import { rowsOfList } from './lists.ts';
import { namesAfter } from './nameable.ts';
import { cellAtPath } from './paths.ts';
import type { RowStore } from './row-store.ts';
import { refOf, type Cell, type Row } from './row.ts';
import { rowAtEnd, type Walk } from './walking.ts';

/** The job as formulas see it. */
export interface Surroundings {
  readonly settings: UnitSettings;
  readonly catalogue: Catalogue;
  readonly book: Book;
  readonly store: RowStore;
  readonly columns: ColumnTypes;
  /** Type a cell has now; checks it first where that is still to be done. */
  readonly typeOf: (cell: Cell) => ValueType;
}

/** What the meaning of one formula hangs on, filled while it is checked. */
export interface Findings {
  readonly links: Set<Cell>;
  readonly watches: Set<string>;
}

export function noFindings(): Findings {
  return { links: new Set(), watches: new Set() };
}

export function namedRow(row: Row): NamedRow {
  return { table: row.table, id: row.id, occurrence: row.occurrence };
}

function resolved<From, To>(result: Result<From>, make: (value: From) => To): Resolved<To> {
  return result.ok
    ? { found: true, thing: make(result.value) }
    : { found: false, problem: result.problem };
}

/** The names of a job as a formula in this row sees them; what it asks for is noted in `findings`. */
export function scopeOf(row: Row, around: Surroundings, findings: Findings): Scope {
  const { store, columns, book, typeOf } = around;
  const walk: Walk = { store, columns, ...findings };
  const links = () => [...findings.links].map(refOf);

  return {
    settings: around.settings,
    catalogue: around.catalogue,
    cell: (steps) =>
      resolved(cellAtPath(row, steps, walk), (cell) => ({
        cell: refOf(cell),
        links: links(),
        type: typeOf(cell),
      })),
    row: (steps) =>
      resolved(rowAtEnd(row, steps, walk), (found) => ({ row: namedRow(found), links: links() })),
    list: (form, ground, kinds, column) =>
      resolved(rowsOfList(row, { form, row: ground, kinds, column }, walk, book), (rows) => ({
        cells: rows.map((one) => {
          const cell = store.cell(one, column.word);
          const counted = columns.known(one.table).has('qty');
          const pieces = counted ? refOf(store.cell(one, 'qty')) : undefined;
          return { cell: refOf(cell), pieces, type: typeOf(cell) };
        }),
        links: links(),
        watches: [...findings.watches],
      })),
    names: (steps): readonly Nameable[] => namesAfter(row, steps, walk, around),
  };
}
