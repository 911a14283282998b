import type { Book } from '../book/book.ts';
import type { Nameable } from '../formula/scope.ts';
import { headColumns, namedRowTables } from '../job/columns.ts';
import type { ColumnTypes } from './column-types.ts';
import { settingsKey } from './paths.ts';
import type { Row } from './row.ts';
import type { RowStore } from './row-store.ts';
import { isLink, rowAtEnd, throughLink, type Walk } from './walking.ts';

interface Known {
  readonly store: RowStore;
  readonly columns: ColumnTypes;
  readonly book: Book;
}

const roots: readonly Nameable[] = [
  { word: 'job', kind: 'root', detail: 'Settings and measures of the job' },
  { word: 'book', kind: 'root', detail: 'Constants of the shop book' },
];

function nameIn(row: Row): string {
  return row.cells.get('name')?.text?.text ?? '';
}

function columnsIn(row: Row, walk: Walk): readonly Nameable[] {
  return [...walk.columns.known(row.table)].map((word) => {
    const label = row.definition?.labels.get(word) ?? walk.columns.column(row.table, word)?.label;
    return {
      word,
      kind: isLink(row, word, walk) ? 'link' : 'column',
      detail: label ?? '',
    };
  });
}

function rowsIn(tables: readonly string[], { store }: Known): readonly Nameable[] {
  return tables.flatMap((table) =>
    store.rows(table).map((row) => {
      const kind = row.definition?.name ?? table;
      return { word: row.id, kind: 'row' as const, detail: [kind, nameIn(row)].join(' · ') };
    }),
  );
}

function groups({ book }: Known): readonly Nameable[] {
  const kinds = [...book.kinds.values()].filter((kind) => !namedRowTables.includes(kind.id));
  return [
    ...kinds.map(({ id, name }) => ({ word: id, kind: 'kind' as const, detail: name })),
    ...namedRowTables.map((word) => ({ word, kind: 'table' as const, detail: 'Every row' })),
  ];
}

function start(row: Row, walk: Walk, known: Known): readonly Nameable[] {
  const draws: readonly Nameable[] =
    row.draws.length === 0 ? [] : [{ word: 'draw', kind: 'root', detail: 'What this row draws' }];
  return [
    ...columnsIn(row, walk),
    ...rowsIn(namedRowTables, known),
    ...roots,
    ...draws,
    ...groups(known),
  ];
}

function settings(known: Known): readonly Nameable[] {
  const row = known.store.byKey(settingsKey);
  const filled = headColumns().filter((column) => row?.cells.get(column.key)?.text !== undefined);
  return [
    ...filled.map(({ key, label }) => ({ word: key, kind: 'column' as const, detail: label })),
    ...rowsIn(['measure'], known),
  ];
}

function afterDraw(row: Row, steps: readonly string[], walk: Walk): readonly Nameable[] {
  const [, name, key, ...rest] = steps;
  if (name === undefined) {
    return row.draws.map((word) => ({ word, kind: 'root', detail: 'A draw of this row' }));
  }
  const prefix = `draw.${name}.`;
  if (key === undefined) {
    return [...row.cells.keys()]
      .filter((column) => column.startsWith(prefix))
      .map((column) => ({ word: column.slice(prefix.length), kind: 'column', detail: '' }));
  }
  const span = { start: 0, end: 0 };
  const linked = throughLink(row, prefix + key, { word: key, span }, walk);
  return linked.ok && rest.length === 0 ? columnsIn(linked.value, walk) : [];
}

/** Columns of every row of a kind or table, for what follows `all(ring).`. */
function columnsOfGroup(word: string, { columns, book }: Known): readonly Nameable[] {
  const kind = book.kinds.get(word);
  const table = namedRowTables.includes(word) ? word : kind?.table;
  if (table === undefined) return [];
  return [...columns.known(table)].map((key) => {
    const label = kind?.labels.get(key) ?? columns.column(table, key)?.label;
    return { word: key, kind: 'column', detail: label ?? '' };
  });
}

/** Names that may follow the words of a path already written; none written: that may start one. */
export function namesAfter(
  row: Row,
  steps: readonly string[],
  walk: Walk,
  known: Known,
): readonly Nameable[] {
  const [first] = steps;
  if (first === undefined) return start(row, walk, known);
  if (first === 'job') return steps.length === 1 ? settings(known) : [];
  if (first === 'book') return steps.length === 1 ? rowsIn(['constant'], known) : [];
  if (first === 'draw') return afterDraw(row, steps, walk);
  const span = { start: 0, end: 0 };
  const end = rowAtEnd(
    row,
    steps.map((word) => ({ word, span })),
    walk,
  );
  if (end.ok) return columnsIn(end.value, walk);
  return steps.length === 1 ? columnsOfGroup(first, known) : [];
}
