import { columnOf, columnsOf, namedRowTables } from './columns.ts';
import type { Column } from './column.ts';
import { mentionsIn, type MentionContext } from './formula-mentions.ts';
import type { IndexedReading } from './read-file.ts';
import { resultColumns } from './result-columns.ts';
import type { SourceCell, SourceRow, TextChange } from './source.ts';
import { changedText } from './text-changes.ts';
import { quotedText } from './write-value.ts';

interface Rename {
  readonly table: string;
  readonly from: string;
  readonly to: string;
}

/** Kits write rows by template: their cells name rows that do not exist yet. */
const templates = new Set(['kit', 'question', 'kit_row']);

/** Lists of ids, by table and key. */
const idLists: Readonly<Record<string, string>> = {
  'kind.on': 'kind',
  'kind.checks': 'kind',
  'kind.tasks': 'kind',
  'material.substitutes': 'material',
};

/** Lists of rows that formulas reach, and of their cells: `base`, `base.length`. */
const namedLists: readonly string[] = ['ask.sets', 'ask.keeps'];

function isListOf(list: string, table: string): boolean {
  return namedLists.includes(list) ? namedRowTables.includes(table) : idLists[list] === table;
}

function listText(cell: SourceCell, spelling: string, rename: Rename): string | undefined {
  const { from, to } = rename;
  if (cell.items?.some((item) => item === from || item.startsWith(`${from}.`)) !== true) {
    return undefined;
  }
  // Ids hold no letter that a pattern would take for more than itself.
  return spelling.replaceAll(new RegExp(`(?<=["'])${from}(?=["'.])`, 'g'), to);
}

function newValue(
  cell: SourceCell,
  column: Column | undefined,
  rename: Rename,
  context: MentionContext,
): string | undefined {
  if (cell.form !== 'string') return undefined;
  if (column?.type.kind === 'link') {
    const meant = column.type.tables.includes(rename.table) && cell.text === rename.from;
    return meant ? quotedText(rename.to) : undefined;
  }
  const spans = mentionsIn(cell.text, { table: rename.table, id: rename.from }, context);
  if (spans.length === 0) return undefined;
  const changes = spans.map((span) => ({ ...span, text: rename.to }));
  return quotedText(changedText(cell.text, changes));
}

interface TableContext extends MentionContext {
  readonly byKey: ReadonlyMap<string, Column>;
}

function contextOf(reading: IndexedReading, table: string): TableContext {
  const stored = columnsOf(reading, table);
  const links = stored.filter((column) => column.type.kind === 'link');
  return {
    settings: reading.context.settings,
    links: new Set(links.map((column) => column.key)),
    columns: new Set([...stored, ...resultColumns(table)].map((column) => column.key)),
    byKey: new Map(stored.map((column) => [column.key, column])),
  };
}

/** Changes that make the keys of an option, `set.door.material`, say the new id. */
function keyChanges(reading: IndexedReading, row: SourceRow, rename: Rename): TextChange[] {
  if (row.table !== 'option' || !namedRowTables.includes(rename.table)) return [];
  const { from, to } = rename;
  const start = reading.split.starts[row.block] ?? 0;
  const text = reading.blocks[row.block]?.text ?? '';
  // Ids hold no letter that a pattern would take for more than itself.
  const found = text.matchAll(
    new RegExp(`^([ \\t]*set[ \\t]*\\.[ \\t]*)${from}(?=[ \\t]*\\.)`, 'gm'),
  );
  return [...found].map(({ index, 1: before = '' }) => {
    const at = start + index + before.length;
    return { start: at, end: at + from.length, text: to };
  });
}

function rowChanges(
  reading: IndexedReading,
  row: SourceRow,
  rename: Rename,
  contexts: (table: string) => TableContext,
): TextChange[] {
  const own = contexts(row.table);
  // Formulas of a kind are about the rows of its table.
  const formulas = row.table === 'kind' ? contexts(row.cells.get('table')?.text ?? 'part') : own;
  const start = reading.split.starts[row.block] ?? 0;
  const changes: TextChange[] = [];
  for (const [key, cell] of row.cells) {
    const at = { start: start + cell.span.start, end: start + cell.span.end };
    const column = own.byKey.get(key) ?? columnOf(row.table, key);
    const text = isListOf(`${row.table}.${key}`, rename.table)
      ? listText(cell, reading.text.slice(at.start, at.end), rename)
      : newValue(cell, column, rename, formulas);
    if (text !== undefined) changes.push({ ...at, text });
  }
  return changes;
}

/** Changes that make every link and formula which means a row use its new id. */
export function referenceChanges(reading: IndexedReading, rename: Rename): readonly TextChange[] {
  const made = new Map<string, TableContext>();
  const contexts = (table: string): TableContext => {
    const context = made.get(table) ?? contextOf(reading, table);
    made.set(table, context);
    return context;
  };
  const changes: TextChange[] = [];
  const headIndex = reading.split.parsed.findIndex((block) => block.role === 'head');
  const headStart = reading.split.starts[headIndex] ?? 0;
  for (const cell of reading.head.values()) {
    const text = newValue(cell, undefined, rename, contexts('job'));
    if (text === undefined) continue;
    changes.push({ start: headStart + cell.span.start, end: headStart + cell.span.end, text });
  }
  for (const row of reading.rows.byBlock) {
    if (row === undefined || row.broken || templates.has(row.table)) continue;
    changes.push(...rowChanges(reading, row, rename, contexts));
    changes.push(...keyChanges(reading, row, rename));
  }
  return changes.sort((a, b) => a.start - b.start);
}
