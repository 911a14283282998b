import type { Book, Kind } from '../../extension/engine/book/book.ts';
import type { CellValue } from '../../extension/engine/formula/value.ts';
import type { UnitSettings } from '../../extension/engine/units/quantity.ts';
import { readQuantity } from '../../extension/engine/units/read-quantity.ts';
import { isUnitWord } from '../../extension/engine/units/unit-words.ts';
import type {
  AnsweredCell,
  AnsweredRow,
  Answers,
  CellResult,
} from '../../extension/engine/workbook/answers.ts';

/** A row as a test writes it: cells by key; `id` and `kind` among them; `draws` separated by blanks. */
export type FakeRow = Readonly<Record<string, string>>;
export type FakeJob = Readonly<Record<string, readonly FakeRow[]>>;

export const inches: UnitSettings = { units: 'in', currency: 'USD' };
export const millimetres: UnitSettings = { units: 'mm', currency: 'USD' };

const texts = new Set(['name', 'kind', 'form', 'unit', 'charge', 'nap', 'grain', 'hands', 'hand']);

// As of a job's own rows, one object for all cells that say nothing.
const blank: CellResult = { state: 'blank' };

function valueOf(column: string, text: string): CellResult {
  if (text === '') return blank;
  if (text === '?') {
    const message = 'it waits for another cell';
    return { state: 'no-answer', problem: { code: 'waiting', message, severity: 'error' } };
  }
  const word = /\d\s*([a-z]+)$/.exec(text)?.[1];
  const read = readQuantity(text, {
    settings: inches,
    ...(word === undefined || isUnitWord(word) ? {} : { countWord: word }),
  });
  if (!texts.has(column) && read.ok) {
    return { state: 'value', value: { kind: 'quantity', ...read.value.value } };
  }
  const value: CellValue = { kind: 'text', text };
  return { state: 'value', value };
}

/** One row whose cells are what their texts say. `?` has no answer. */
export function fakeRow(table: string, cells: FakeRow, occurrence = 0): AnsweredRow {
  const known = new Map<string, AnsweredCell>();
  return {
    table,
    id: cells['id'] ?? '',
    occurrence,
    kind: cells['kind'] ?? '',
    broken: cells['broken'] === 'yes',
    draws: (cells['draws'] ?? '').split(' ').filter((name) => name !== ''),
    cell: (column) => {
      const before = known.get(column);
      if (before !== undefined) return before;
      const text = cells[column];
      const cell: AnsweredCell = {
        column,
        text,
        origin: 'typed',
        formula: false,
        result: valueOf(column, text ?? ''),
      };
      known.set(column, cell);
      return cell;
    },
  };
}

/** Answers over rows that are already made, so that a test can change one and keep the others. */
export function answersOver(tables: ReadonlyMap<string, readonly AnsweredRow[]>): Answers {
  const byId = new Map<string, AnsweredRow>();
  for (const [table, rows] of tables) {
    for (const row of rows) byId.set(`${table}/${row.id}`, row);
  }
  const row = (table: string, id: string): AnsweredRow | undefined => byId.get(`${table}/${id}`);
  return {
    rows: (table) => tables.get(table) ?? [],
    row,
    setting: () => ({ state: 'blank' }),
    under: (from) => {
      const chain: AnsweredRow[] = [];
      let next = row('part', from.cell('on').text ?? '');
      while (next !== undefined && !chain.includes(next)) {
        chain.push(next);
        next = row('part', next.cell('on').text ?? '');
      }
      return chain;
    },
    problems: [],
  };
}

/** Answers of a whole made-up job and book. */
export function fakeAnswers(job: FakeJob): Answers {
  return answersOver(fakeTables(job));
}

/** The rows of a made-up job, by table. */
export function fakeTables(job: FakeJob): Map<string, readonly AnsweredRow[]> {
  return new Map(
    Object.entries(job).map(([table, rows]) => [table, rows.map((row) => fakeRow(table, row))]),
  );
}

function fakeKind(id: string, part: Partial<Kind>): Kind {
  return {
    id,
    name: id,
    table: 'part',
    group: 'structure',
    help: '',
    on: [],
    columns: ['material', 'use', 'qty'],
    takes: 'amount',
    words: '',
    labels: new Map(),
    helps: new Map(),
    defaults: new Map(),
    results: new Map(),
    draws: [],
    waits: false,
    source: '',
    rules: [],
    knobs: [],
    steps: [],
    tools: [],
    cautions: [],
    hazards: [],
    checks: [],
    tasks: [],
    ...part,
  };
}

/** A book with the few kinds the tests of the bill need. */
export const fakeBook: Book = {
  title: 'Test shop',
  currency: 'USD',
  origin: 'demo',
  materials: new Map(),
  constants: new Map(),
  packs: [],
  suppliers: [],
  bands: [],
  kinds: new Map(
    [
      fakeKind('base', { takes: 'blank' }),
      fakeKind('baffle', { takes: 'blank' }),
      fakeKind('ring', { takes: 'blank' }),
      fakeKind('tube_ring', { takes: 'strip' }),
      fakeKind('shim', { takes: 'strip' }),
      fakeKind('existing', { takes: 'none', columns: ['shape'] }),
      fakeKind('skin', { takes: 'blank', group: 'skin' }),
      fakeKind('resin', { group: 'skin' }),
      fakeKind('mat', { group: 'skin' }),
      fakeKind('vinyl', { takes: 'blank', group: 'finish' }),
      fakeKind('amount', {}),
      fakeKind('consumable', { group: 'shop' }),
      fakeKind('wire', { group: 'drivers' }),
      fakeKind('extra', { takes: 'none', columns: ['price', 'qty'], group: 'shop' }),
    ].map((kind) => [kind.id, kind]),
  ),
  kits: [],
  problems: [],
};
