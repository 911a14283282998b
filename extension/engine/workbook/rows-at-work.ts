import type { Book } from '../book/book.ts';
import { namedRowTables } from '../job/columns.ts';
import type { SourceRow } from '../job/source.ts';
import type { NameGraph } from './name-graph.ts';
import { fromSource, type RowInput, type TableInput } from './row-inputs.ts';
import type { RowStore } from './row-store.ts';
import { hasKinds, textsOfRow } from './row-texts.ts';
import { rowKeyOf, type Cell, type CellText, type Row } from './row.ts';
import { linkText } from './standing.ts';

/** What laying new rows over old ones is told to. */
export interface Laying {
  readonly store: RowStore;
  readonly graph: NameGraph;
  readonly disturb: (cell: Cell) => void;
  /** A row says something else, or has another place. */
  readonly touch: (row: Row) => void;
  readonly removed: (row: Row) => void;
}

function sameText(a: CellText | undefined, b: CellText | undefined): boolean {
  return a?.text === b?.text && a?.origin === b?.origin;
}

function definitionOf(row: Row, kind: string, book: Book): Row['definition'] {
  const found = book.kinds.get(kind);
  return found?.table === row.table ? found : undefined;
}

/** Brings the rows at work to what the files say now. */
export class RowsAtWork {
  private readonly laying: Laying;
  private readonly identities = new Map<string, object>();
  private readonly sources = new Map<string, readonly SourceRow[]>();
  /** Rows were laid before; until then nothing hangs on any. */
  private begun = false;

  constructor(laying: Laying) {
    this.laying = laying;
  }

  /** True when rows came, went, moved or changed what they are. */
  lay(tables: readonly TableInput[], book: Book): boolean {
    let structure = false;
    for (const input of tables) {
      const { table, identity, sources } = input;
      if (this.identities.get(table) === identity) continue;
      this.identities.set(table, identity);
      const changed = sources && this.changedSources(table, sources);
      const moved =
        changed === undefined
          ? this.layTable(table, input.rows(), book)
          : this.layChanged(table, changed, book);
      if (moved) structure = true;
      if (sources !== undefined) this.sources.set(table, sources);
    }
    this.begun = true;
    return structure;
  }

  /**
   * Rows of a table that say something else, where every row has the name and place it had: that is
   * told by comparing the two lists alone. Undefined where rows came, went, moved or were renamed.
   */
  private changedSources(
    table: string,
    now: readonly SourceRow[],
  ): readonly SourceRow[] | undefined {
    const before = this.sources.get(table);
    if (before?.length !== now.length) return undefined;
    const changed: SourceRow[] = [];
    for (let index = 0; index < now.length; index++) {
      const row = now[index];
      const old = before[index];
      if (row === old) continue;
      if (row === undefined || row.id !== old?.id || row.occurrence !== old.occurrence)
        return undefined;
      changed.push(row);
    }
    return changed;
  }

  private layTable(table: string, inputs: readonly RowInput[], book: Book): boolean {
    const { store } = this.laying;
    const before = store.rows(table);
    const known = new Set(before);
    const { rows, changed } = this.rowsFor(table, inputs);
    const kept = new Set(rows);
    for (const row of before) if (!kept.has(row)) this.remove(row);
    const moved = before.length !== rows.length || rows.some((row, index) => before[index] !== row);
    if (moved) store.order(table, rows);
    let structure = moved;
    for (const row of changed) if (this.layRow(row, book, known.has(row))) structure = true;
    if (moved) this.reordered(table);
    return structure;
  }

  /** The rows at work for these inputs, new ones added, and those that say something else now. */
  private rowsFor(
    table: string,
    inputs: readonly RowInput[],
  ): { readonly rows: readonly Row[]; readonly changed: readonly Row[] } {
    const { store } = this.laying;
    const changed: Row[] = [];
    const rows = inputs.map((input) => {
      const known = store.byKey(rowKeyOf(table, input.id, input.occurrence));
      const row = known ?? store.add({ ...input, source: input.source() });
      if (known?.source.identity === input.identity) return row;
      row.source = input.source();
      changed.push(row);
      return row;
    });
    return { rows, changed };
  }

  /** Lays rows that say something else and stand where they stood. */
  private layChanged(table: string, changed: readonly SourceRow[], book: Book): boolean {
    let structure = false;
    for (const source of changed) {
      const input = fromSource(source);
      const row = this.laying.store.byKey(rowKeyOf(table, input.id, input.occurrence));
      if (row === undefined) continue;
      row.source = input.source();
      if (this.layRow(row, book, true)) structure = true;
    }
    return structure;
  }

  private remove(row: Row): void {
    const { store, graph, disturb, removed } = this.laying;
    this.stir(row);
    for (const cell of row.cells.values()) {
      graph.hang(cell, [], []);
      for (const reader of cell.readers ?? []) disturb(reader);
    }
    store.remove(row);
    removed(row);
  }

  /** Texts of a row; true when it is another kind of row now, or stands elsewhere. */
  private layRow(row: Row, book: Book, known: boolean): boolean {
    const { store, touch } = this.laying;
    const { texts, under } = row.source;
    const kind = hasKinds(row.table) ? (texts.get('kind') ?? '') : '';
    const fits = definitionOf(row, kind, book);
    const said = textsOfRow({ table: row.table, typed: texts, under, kind: fits, book });
    const on = said.cells.get('on')?.text;
    const legible = row.legible === !row.source.broken;
    const same = known && legible && kind === row.kind && on === linkText(row, 'on');
    const structure = !same;
    if (structure) this.stir(row);
    row.definition = fits;
    row.legible = !row.source.broken;
    if (!legible) this.disturbCells(row);
    row.draws = said.draws;
    if (kind !== row.kind) store.setKind(row, kind);
    this.layTexts(row, said.cells);
    store.setOn(row, on);
    touch(row);
    if (structure) this.stir(row);
    return structure;
  }

  private disturbCells(row: Row): void {
    for (const cell of row.cells.values()) this.laying.disturb(cell);
  }

  /** Gives a row's cells their texts; those that say something else are looked at again. */
  private layTexts(row: Row, texts: ReadonlyMap<string, CellText>): void {
    const named = row.table !== 'job';
    for (const column of row.cells.keys())
      if (!texts.has(column) && !(named && column === 'id')) this.layText(row, column, undefined);
    texts.forEach((text, column) => {
      if (!named || column !== 'id') this.layText(row, column, text);
    });
    if (named) this.layText(row, 'id', { text: row.id, origin: 'typed' });
  }

  private layText(row: Row, column: string, text: CellText | undefined): void {
    const cell = row.cells.get(column);
    if (sameText(cell?.text, text)) return;
    const changed = cell ?? this.laying.store.cell(row, column);
    changed.text = text;
    changed.answered = undefined;
    this.laying.disturb(changed);
  }

  /** Disturbs all that hangs on a row being there, of its kind, on its ground. */
  private stir(row: Row): void {
    if (!this.begun) return;
    const { store, touch } = this.laying;
    this.disturbAll(`name:${row.id}`);
    this.disturbAll(`table:${row.table}`);
    if (row.kind !== '') this.disturbAll(`kind:${row.kind}`);
    const seen = new Set<string>([row.id]);
    for (const id of seen) {
      this.disturbAll(`on:${id}`);
      for (const one of id === row.id ? [row, ...store.inJob(id)] : store.inJob(id)) {
        const ground = linkText(one, 'on');
        if (ground !== undefined) seen.add(ground);
        touch(one);
      }
    }
    for (const one of store.allStandingOn(row)) touch(one);
  }

  private reordered(table: string): void {
    if (!this.begun || !namedRowTables.includes(table)) return;
    this.disturbAll(`table:${table}`);
    const kinds = new Set<string>();
    for (const row of this.laying.store.rows(table)) kinds.add(row.kind);
    for (const kind of kinds) this.disturbAll(`kind:${kind}`);
    for (const row of this.laying.store.rows(table)) this.disturbAll(`on:${row.id}`);
  }

  private disturbAll(key: string): void {
    for (const cell of this.laying.graph.watching(key)) this.laying.disturb(cell);
  }
}
