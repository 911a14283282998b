import * as vscode from 'vscode';
import { type BookRow, type Edit, type Snapshot } from '../engine/index.ts';
import type { Desks } from './desks.ts';
import { editOrTell } from './edit-or-tell.ts';
import type { JobDesk } from './job-desk.ts';

/** A row that is built in, as it would stand in the shop's book. */
interface BuiltInRow {
  readonly table: string;
  readonly id: string;
  readonly name: string;
  readonly words: string;
  readonly cells: Readonly<Record<string, string>>;
}

function plain(table: string, rows: Iterable<BookRow>): readonly BuiltInRow[] {
  return [...rows]
    .filter(({ origin }) => origin === 'built-in')
    .map(({ id, cells }) => {
      const texts = Object.fromEntries([...cells].filter(([, text]) => !text.startsWith('[')));
      const words = [texts['value'], texts['source']].filter((text) => text !== undefined);
      return { table, id, name: texts['name'] ?? id, words: words.join(' · '), cells: texts };
    });
}

/** Kinds of work with what they reckon by: a shop's own rates are written over it. */
function kinds({ book, shown }: Snapshot): readonly BuiltInRow[] {
  const own = new Set((shown.tables.get('kind') ?? []).map(({ id }) => id));
  return [...book.kinds.values()]
    .filter(({ id, table, defaults }) => !own.has(id) && id !== table && defaults.size > 0)
    .map(({ id, table, name, defaults }) => {
      const figures = [...defaults].filter(([, text]) => !text.startsWith('='));
      const sets = figures.map(([key, text]) => [`default.${key}`, text] as const);
      const cells = { name, table, ...Object.fromEntries(sets) };
      const words = figures.map(([key, text]) => `${key} ${text}`).join(' · ');
      return { table: 'kind', id, name, words, cells };
    });
}

function builtIn(table: string, snapshot: Snapshot): readonly BuiltInRow[] {
  const { book } = snapshot;
  switch (table) {
    case 'material':
      return plain(table, book.materials.values());
    case 'constant':
      return plain(table, book.constants.values());
    case 'kind':
      return kinds(snapshot);
    default:
      return [];
  }
}

const tables = [
  { label: 'Constants', table: 'constant' },
  { label: 'Materials', table: 'material' },
  { label: 'Kinds and rates', table: 'kind' },
];

async function chosenTable(): Promise<string | undefined> {
  const picked = await vscode.window.showQuickPick(tables, { title: 'Take Over Built-in Rows' });
  return picked?.table;
}

/** Writes rows that are built in into the shop's book, so that their figures can be the shop's own. */
export async function takeOverRows(desk: JobDesk, desks: Desks): Promise<void> {
  const at = desks.active?.desk === desk ? desks.active.panel.cursor?.table : undefined;
  const known = tables.some(({ table }) => table === at);
  const table = known ? at : await chosenTable();
  if (table === undefined) return;
  const items = builtIn(table, desk.snapshot()).map((row) => ({
    label: row.name,
    description: row.id,
    detail: row.words,
    row,
  }));
  const picked = await vscode.window.showQuickPick(items, {
    title: 'Take Over Built-in Rows',
    placeHolder: 'Rows whose figures are to be the shop’s own',
    canPickMany: true,
    matchOnDescription: true,
    matchOnDetail: true,
  });
  if (picked === undefined || picked.length === 0) return;
  const edits = picked.map(({ row }): Edit => {
    const { id, cells } = row;
    return { kind: 'insert-row', table, id, cells };
  });
  await editOrTell(desk, edits);
}
