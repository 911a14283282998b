import type { Problem } from '../problems.ts';
import { bookProblem } from './book-problems.ts';
import type { Kit, KitQuestion, KitRow } from './book.ts';
import { texts, type LaidRow } from './layers.ts';

const questionTypes = [
  'text',
  'id',
  'number',
  'length',
  'angle',
  'shape',
  'money',
  'choice',
  'row',
  'material',
  'yes-no',
] as const;

function questionFrom(row: LaidRow): KitQuestion {
  const text = texts(row);
  const key = text.get('key') ?? row.id;
  const startMm = text.get('start_mm');
  return {
    key,
    label: text.get('label') ?? key.replaceAll('_', ' '),
    help: text.get('help') ?? '',
    type: questionTypes.find((type) => type === text.get('type')) ?? 'text',
    of: row.cells.get('of')?.items ?? [],
    start: text.get('start') ?? '',
    required: text.get('required') === 'yes',
    ...(startMm === undefined ? {} : { startMm }),
  };
}

function kitRowFrom(row: LaidRow): KitRow {
  const text = texts(row);
  const when = text.get('when');
  const cells = [...text].filter(([key]) => key.startsWith('set.'));
  return {
    table: text.get('table') ?? '',
    id: text.get('row') ?? '',
    cells: new Map(cells.map(([key, template]) => [key.slice('set.'.length), template])),
    ...(when === undefined ? {} : { when }),
  };
}

function ofKit(rows: ReadonlyMap<string, LaidRow>, kit: string): readonly LaidRow[] {
  return [...rows.values()].filter((row) => row.cells.get('kit')?.text === kit);
}

interface KitTables {
  readonly kits: ReadonlyMap<string, LaidRow>;
  readonly questions: ReadonlyMap<string, LaidRow>;
  readonly rows: ReadonlyMap<string, LaidRow>;
}

/** Kits with their questions and rows, in the order they stand in. */
export function kitsFrom({ kits, questions, rows }: KitTables): readonly Kit[] {
  return [...kits.values()].map((kit) => ({
    id: kit.id,
    name: kit.cells.get('name')?.text ?? kit.id,
    help: kit.cells.get('help')?.text ?? '',
    questions: ofKit(questions, kit.id).map(questionFrom),
    rows: ofKit(rows, kit.id).map(kitRowFrom),
  }));
}

/** Keys that a template asks for. */
export function keysIn(template: string): readonly string[] {
  return [...template.matchAll(/\{([a-z][a-z0-9_]*)(?::stem)?\}/g)].map((found) => found[1] ?? '');
}

function rowProblems(row: LaidRow, keys: ReadonlySet<string>): readonly Problem[] {
  const kit = row.cells.get('kit')?.text ?? '';
  const place = { table: 'kit_row', row: row.id };
  const { table, id, cells, when } = kitRowFrom(row);
  const incomplete =
    table === '' || id === ''
      ? [bookProblem('kit-id-missing', { id: row.id, kit }, { place })]
      : [];
  const asked = [
    ...keysIn(id).map((key) => ({ key, column: 'id' })),
    ...(when === undefined ? [] : [{ key: when, column: 'when' }]),
    ...[...cells].flatMap(([column, template]) => keysIn(template).map((key) => ({ key, column }))),
  ];
  const unknown = asked
    .filter(({ key }) => !keys.has(key))
    .map(({ key, column }) =>
      bookProblem('kit-key-unknown', { id: row.id, kit, key, column }, { place }),
    );
  return [...incomplete, ...unknown];
}

/** What is wrong with kits, their questions and their rows. */
export function kitTableProblems({ kits, questions, rows }: KitTables): readonly Problem[] {
  const strays = [
    ...[...questions.values()].map((row) => ({ row, table: 'question' })),
    ...[...rows.values()].map((row) => ({ row, table: 'kit_row' })),
  ].filter(({ row }) => !kits.has(row.cells.get('kit')?.text ?? ''));
  const lost = strays.map(({ row, table }) => {
    const details = { table, id: row.id, kit: row.cells.get('kit')?.text ?? '' };
    return bookProblem('kit-unknown', details, { place: { table, row: row.id } });
  });
  const faulty = [...kits.keys()].flatMap((kit) => {
    const keys = new Set(ofKit(questions, kit).map((row) => questionFrom(row).key));
    return ofKit(rows, kit).flatMap((row) => rowProblems(row, keys));
  });
  return [...lost, ...faulty];
}
