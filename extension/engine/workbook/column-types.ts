import type { Book } from '../book/book.ts';
import type { ValueType } from '../formula/value.ts';
import type { Column, ColumnType } from '../job/column.ts';
import { columnOf, columnsOf, headColumns } from '../job/columns.ts';
import { resultColumns } from '../job/result-columns.ts';
import type { FileReading } from '../job/source.ts';

/** What the columns of each table hold. */
export interface ColumnTypes {
  /** Type a column declares; undefined where it follows from what stands in the cell. */
  readonly declared: (table: string, column: string) => ColumnType | undefined;
  /** Columns that formulas may read in rows of a table. */
  readonly known: (table: string) => ReadonlySet<string>;
  /** Worked out after all formulas, so that none may read it. */
  readonly late: (table: string, column: string) => boolean;
  readonly column: (table: string, column: string) => Column | undefined;
}

const wordType: ColumnType = { kind: 'text' };

function kindColumns(book: Book, table: string): readonly string[] {
  const kinds = [...book.kinds.values()].filter(
    (kind) => kind.table === table || kind.id === table,
  );
  return kinds.flatMap((kind) => [...kind.defaults.keys(), ...kind.results.keys()]);
}

function readable(table: string, reading: FileReading): readonly string[] {
  const core = table === 'job' ? headColumns() : columnsOf(reading, table);
  return [...core, ...resultColumns(table)]
    .filter((column) => column.computed !== 'late')
    .map((column) => column.key);
}

/** Remembers what a function says of each key. */
function remembered<Answer>(ask: (table: string, key: string) => Answer): typeof ask {
  const tables = new Map<string, Map<string, { readonly answer: Answer }>>();
  return (table, key) => {
    const answers = tables.get(table) ?? new Map<string, { readonly answer: Answer }>();
    const known = answers.get(key);
    if (known !== undefined) return known.answer;
    const answer = ask(table, key);
    tables.set(table, answers.set(key, { answer }));
    return answer;
  };
}

export function columnTypes(reading: FileReading, book: Book): ColumnTypes {
  const names = new Map<string, ReadonlySet<string>>();
  const column = remembered(
    (table, key) =>
      columnOf(table, key) ?? columnsOf(reading, table).find((one) => one.key === key),
  );
  return {
    declared: (table, key) =>
      key === 'kind' || key === 'id' ? wordType : column(table, key)?.type,
    known: (table) => {
      const found = names.get(table);
      if (found !== undefined) return found;
      const made = new Set(['id', ...readable(table, reading), ...kindColumns(book, table)]);
      names.set(table, made);
      return made;
    },
    late: (table, key) => column(table, key)?.computed === 'late',
    column,
  };
}

/** What a formula in a column must come to; `any` where the column takes what comes. */
export function wantedType(type: ColumnType | undefined): ValueType | 'any' {
  if (type === undefined) return 'any';
  switch (type.kind) {
    case 'quantity':
      return type.dimension === 'any' ? 'any' : { kind: 'quantity', dimension: type.dimension };
    case 'text':
    case 'date':
    case 'list':
      return { kind: 'text' };
    default:
      return type;
  }
}
