import { applyEdits } from '../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../extension/engine/job/read-file.ts';
import type { Edit, FileReading, SourceRow } from '../../extension/engine/job/source.ts';

/** Numbers that look random and are the same for one seed on every machine (mulberry32). */
export interface Chance {
  /** A whole number from 0 up to but without `below`. */
  readonly nat: (below: number) => number;
  readonly pick: <One>(list: readonly One[]) => One | undefined;
}

export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  const nat = (below: number): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296) * below);
  };
  return { nat, pick: (list) => list[nat(list.length)] };
}

/** Tables in which the gestures work. */
const tables = ['panel', 'driver', 'measure', 'part', 'task', 'check'];

function rowsIn(reading: FileReading, among: readonly string[]): readonly SourceRow[] {
  return among.flatMap((table) => reading.tables.get(table) ?? []);
}

function freshId(chance: Chance, row: SourceRow): string {
  const letter = (): string => String.fromCharCode(97 + chance.nat(26));
  const word = row.cells.get('kind')?.text ?? row.table;
  return `${letter()}${letter()}${letter()}_${/^[a-z_]+$/.test(word) ? word : row.table}`;
}

const inches = /^(?:\d+ )?(?:\d+(?:\/\d+)?) in$/;

/** Another text for a cell, of the kind that stands there. */
function otherText(chance: Chance, text: string): string | undefined {
  if (inches.test(text))
    return `${String(1 + chance.nat(30))} ${String(1 + 2 * chance.nat(8))}/16 in`;
  if (/^\d+ min$/.test(text)) return `${String(5 + chance.nat(90))} min`;
  if (/^\d+ deg$/.test(text)) return `${String(chance.nat(30))} deg`;
  if (/ /.test(text) && !text.startsWith('=') && !/\d/.test(text)) {
    return `${text.replace(/ \(\d+\)$/, '')} (${String(chance.nat(1000))})`;
  }
  return undefined;
}

/** Cells that may be set to something else without making another cell senseless. */
function changeable(row: SourceRow): readonly string[] {
  return [...row.cells.keys()].filter((key) => {
    const text = row.cells.get(key)?.text ?? '';
    return otherText(chanceOf(1), text) !== undefined;
  });
}

function cellEdits(chance: Chance, reading: FileReading): readonly Edit[] {
  const row = chance.pick(rowsIn(reading, tables).filter((one) => changeable(one).length > 0));
  const column = row && chance.pick(changeable(row));
  if (row === undefined || column === undefined) return [];
  const text = otherText(chance, row.cells.get(column)?.text ?? '');
  return [{ kind: 'set-cell', row, column, text }];
}

/** A length becomes a formula that means the same column of a row further up in the first version. */
function formulaEdits(chance: Chance, reading: FileReading, ranks: Ranks): readonly Edit[] {
  const rows = rowsIn(reading, ['part', 'driver']).filter((row) => ranks.has(row.id));
  const lengths = (row: SourceRow): readonly string[] =>
    [...row.cells].filter(([, { text }]) => inches.test(text)).map(([key]) => key);
  const row = chance.pick(rows.filter((one) => lengths(one).length > 0));
  const column = row && chance.pick(lengths(row));
  if (row === undefined || column === undefined) return [];
  const above = rows.filter(
    (one) => (ranks.get(one.id) ?? 0) < (ranks.get(row.id) ?? 0) && lengths(one).length > 0,
  );
  const other = chance.pick(above);
  const from = other && chance.pick(lengths(other));
  if (other === undefined || from === undefined) return [];
  const text = `=${other.id}.${from} + ${String(1 + chance.nat(7))}/8in`;
  return [{ kind: 'set-cell', row, column, text }];
}

function fillEdits(chance: Chance, reading: FileReading): readonly Edit[] {
  const rows = reading.tables.get('part') ?? [];
  const from = chance.nat(rows.length);
  const text = `shop ${String(chance.nat(100))}`;
  return rows
    .slice(from, from + 2 + chance.nat(4))
    .map((row) => ({ kind: 'set-cell', row, column: 'note', text }));
}

function duplicateEdits(chance: Chance, reading: FileReading): readonly Edit[] {
  const row = chance.pick(rowsIn(reading, ['part', 'task', 'check', 'measure']));
  if (row === undefined) return [];
  const cells = Object.fromEntries([...row.cells].map(([key, { text }]) => [key, text]));
  const after = chance.nat(2) === 0 ? row.id : undefined;
  const place = after === undefined ? {} : { after };
  return [{ kind: 'insert-row', table: row.table, id: freshId(chance, row), cells, ...place }];
}

function insertEdits(chance: Chance, reading: FileReading): readonly Edit[] {
  const row = chance.pick(reading.tables.get('part') ?? []);
  const base = chance.pick(
    reading.tables.get('part')?.filter((one) => one.cells.get('kind')?.text === 'base') ?? [],
  );
  if (row === undefined || base === undefined) return [];
  const cells = { kind: 'ring', name: 'New ring', on: base.id, size: '8 in' };
  const after = chance.pick([row.id, undefined, null]);
  const place = after === undefined ? {} : { after };
  return [{ kind: 'insert-row', table: 'part', id: freshId(chance, row), cells, ...place }];
}

function deleteEdits(chance: Chance, reading: FileReading): readonly Edit[] {
  const text = reading.text;
  // A row that nothing speaks of, so that the branch by itself still calculates.
  const rows = rowsIn(reading, ['part', 'task', 'check', 'measure']).filter(
    ({ id }) => text.split(new RegExp(`\\b${id}\\b`)).length === 2,
  );
  const row = chance.pick(rows);
  return row === undefined ? [] : [{ kind: 'delete-row', row }];
}

function moveEdits(chance: Chance, reading: FileReading): readonly Edit[] {
  const row = chance.pick(rowsIn(reading, ['part', 'task']));
  const other = row && chance.pick(reading.tables.get(row.table) ?? []);
  if (row === undefined || other === undefined || other === row) return [];
  return [{ kind: 'move-row', row, after: chance.nat(5) === 0 ? null : other.id }];
}

function sortEdits(chance: Chance, reading: FileReading): readonly Edit[] {
  const table = chance.pick(['part', 'task', 'check']) ?? 'part';
  const key = chance.pick(['name', 'kind']) ?? 'name';
  const word = (row: SourceRow): string => row.cells.get(key)?.text ?? '';
  const ids = [...(reading.tables.get(table) ?? [])]
    .sort((a, b) => (word(a) < word(b) ? -1 : 1))
    .map(({ id }) => id);
  return [{ kind: 'sort-rows', table, ids }];
}

function renameEdits(chance: Chance, reading: FileReading): readonly Edit[] {
  const row = chance.pick(rowsIn(reading, ['part', 'driver', 'panel', 'measure']));
  if (row === undefined) return [];
  return [{ kind: 'rename-row', row, id: `${freshId(chance, row).slice(0, 3)}_${row.id}` }];
}

function settingEdits(chance: Chance): readonly Edit[] {
  const key = chance.pick(['note', 'client', 'terms', 'temperature']) ?? 'note';
  const text =
    key === 'temperature'
      ? `${String(60 + chance.nat(25))} degF`
      : `text ${String(chance.nat(500))}`;
  return [{ kind: 'set-head', key, text }];
}

function clearEdits(chance: Chance, reading: FileReading): readonly Edit[] {
  const rows = rowsIn(reading, tables).filter((row) => row.cells.has('note'));
  const row = chance.pick(rows);
  return row === undefined ? [] : [{ kind: 'set-cell', row, column: 'note', text: undefined }];
}

/** Places of the rows of the first version, so that no formula of a gesture can close a circle. */
type Ranks = ReadonlyMap<string, number>;

export type GestureKind = (typeof gestureKinds)[number];

/** Each as often as it stands here: what an estimator does most is there most. */
const gestureKinds = [
  ...['cell', 'cell', 'cell', 'cell', 'cell', 'cell', 'formula', 'formula'],
  ...['fill', 'duplicate', 'insert', 'insert', 'delete', 'move', 'rename', 'setting', 'clear'],
  'sort',
] as const;

function gesture(
  kind: GestureKind,
  chance: Chance,
  reading: FileReading,
  ranks: Ranks,
): readonly Edit[] {
  switch (kind) {
    case 'formula':
      return formulaEdits(chance, reading, ranks);
    case 'fill':
      return fillEdits(chance, reading);
    case 'duplicate':
      return duplicateEdits(chance, reading);
    case 'insert':
      return insertEdits(chance, reading);
    case 'delete':
      return deleteEdits(chance, reading);
    case 'move':
      return moveEdits(chance, reading);
    case 'sort':
      return chance.nat(3) === 0 ? sortEdits(chance, reading) : [];
    case 'rename':
      return renameEdits(chance, reading);
    case 'setting':
      return settingEdits(chance);
    case 'clear':
      return clearEdits(chance, reading);
    default:
      return cellEdits(chance, reading);
  }
}

/** What one person did to a job. */
export interface Branch {
  readonly text: string;
  /** Gestures in order, each on the text that the one before left. */
  readonly gestures: readonly (readonly Edit[])[];
}

function ranksOf(reading: FileReading): Ranks {
  return new Map(rowsIn(reading, tables).map((row, rank) => [row.id, rank]));
}

export function randomBranch(
  base: string,
  chance: Chance,
  kinds: readonly GestureKind[] = gestureKinds,
): Branch {
  let reading = readFile(base);
  const ranks = ranksOf(reading);
  const gestures: (readonly Edit[])[] = [];
  const count = 1 + chance.nat(12);
  for (let made = 0; made < count; made++) {
    const edits = gesture(chance.pick(kinds) ?? 'cell', chance, reading, ranks);
    const done = applyEdits(reading, edits);
    if (!done.ok || edits.length === 0) continue;
    gestures.push(edits);
    ({ reading } = done.value);
  }
  return { text: reading.text, gestures };
}

/** The text after all gestures of a branch; undefined where one of them cannot be made on it. */
export function withGestures(text: string, gestures: Branch['gestures']): string | undefined {
  let reading = readFile(text);
  for (const edits of gestures) {
    const done = applyEdits(reading, edits);
    if (!done.ok) return undefined;
    ({ reading } = done.value);
  }
  return reading.text;
}

/** All cells of a job, as `part/ring#0/size` → text; `order` is one of them where asked for. */
export function cellTexts(text: string, withOrder = true): ReadonlyMap<string, string> {
  const reading = readFile(text);
  const cells = new Map<string, string>();
  for (const [key, cell] of reading.head) cells.set(`job/${key}`, cell.text);
  for (const row of [...reading.tables.values()].flat()) {
    const name = `${row.table}/${row.id}#${String(row.occurrence)}`;
    cells.set(name, '');
    for (const [key, cell] of row.cells) cells.set(`${name}/${key}`, cell.text);
    if (withOrder && row.order !== undefined) cells.set(`${name}/order`, String(row.order));
  }
  return cells;
}

/** Cells in which two jobs differ. */
export function differences(
  a: ReadonlyMap<string, string>,
  b: ReadonlyMap<string, string>,
): readonly string[] {
  return [...new Set([...a.keys(), ...b.keys()])].filter((key) => a.get(key) !== b.get(key));
}
