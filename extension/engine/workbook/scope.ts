import type { Book } from '../book/book.ts';
import type { Catalogue } from '../formula/catalogue.ts';
import type { Step } from '../formula/expression.ts';
import type { CellRef, NamedRow, Nameable, Resolved, Scope } from '../formula/scope.ts';
import type { ValueType } from '../formula/value.ts';
import type { OutlineSource } from '../geometry/outline-files.ts';
import { namedRowTables } from '../job/columns.ts';
import type { Result } from '../result.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { ColumnTypes } from './column-types.ts';
import { rowsOfList } from './lists.ts';
import { namesAfter } from './nameable.ts';
import { cellAtPath } from './paths.ts';
import type { RowStore } from './row-store.ts';
import { refOf, type Cell, type Row } from './row.ts';
import { rowAtEnd, watchNames, type Walk } from './walking.ts';

/** The job as formulas see it. */
export interface Surroundings {
  readonly settings: UnitSettings;
  readonly outlines: OutlineSource | undefined;
  readonly catalogue: Catalogue;
  readonly book: Book;
  readonly store: RowStore;
  readonly columns: ColumnTypes;
  /** Type a cell has now; checks it first where that is still to be done. */
  readonly typeOf: (cell: Cell) => ValueType;
}

/** A path that a formula asked for, and what it found. */
export interface AskedPath {
  readonly steps: readonly Step[];
  readonly ref: CellRef;
  readonly type: ValueType;
}

/** A path that a formula asked for, and what it found. */
export interface AskedPath {
  readonly steps: readonly Step[];
  readonly ref: CellRef;
  readonly type: ValueType;
}

/** What the meaning of one formula hangs on, filled while it is checked. */
export interface Findings {
  readonly links: Set<Cell>;
  readonly watches: Set<string>;
  readonly asked: AskedPath[];
  /** The cell behind each reference given out. */
  readonly bound: Map<CellRef, Cell>;
  /** Something else was asked for than paths that lead to cells. */
  more: boolean;
}

export function noFindings(): Findings {
  return { links: new Set(), watches: new Set(), asked: [], bound: new Map(), more: false };
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
  const bound = (cell: Cell): CellRef => {
    const ref = refOf(cell);
    findings.bound.set(ref, cell);
    return ref;
  };
  const listed = (one: Row, column: string) => {
    const cell = store.cell(one, column);
    const counted = columns.known(one.table).has('qty');
    const pieces = counted ? bound(store.cell(one, 'qty')) : undefined;
    return { cell: bound(cell), pieces, type: typeOf(cell) };
  };

  return {
    settings: around.settings,
    catalogue: around.catalogue,
    cell: (steps) => {
      const found = cellAtPath(row, steps, walk);
      if (!found.ok) findings.more = true;
      return resolved(found, (cell) => {
        const [ref, type] = [bound(cell), typeOf(cell)];
        findings.asked.push({ steps, ref, type });
        return { cell: ref, links: links(), type };
      });
    },
    row: (steps) => {
      findings.more = true;
      return resolved(rowAtEnd(row, steps, walk), (found) => ({
        row: namedRow(found),
        links: links(),
      }));
    },
    list: (form, ground, kinds, column) => {
      findings.more = true;
      const found = rowsOfList(row, { form, row: ground, kinds, column }, walk, book);
      return resolved(found, (rows) => ({
        cells: rows.map((one) => listed(one, column.word)),
        links: links(),
        watches: [...findings.watches],
      }));
    },
    names: (steps): readonly Nameable[] => {
      watchNames(walk, namedRowTables);
      return namesAfter(row, steps, walk, around);
    },
  };
}
