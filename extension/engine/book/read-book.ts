import type { FileReading } from '../job/source.ts';
import type { Problem } from '../problems.ts';
import { bookProblem } from './book-problems.ts';
import type { Band, Book, BookRow, BookSources, Kind, Kit } from './book.ts';
import {
  figureProblems,
  materialProblems,
  packProblems,
  takenMaterialProblems,
} from './check-book.ts';
import { foundation, type BookTable, type Foundation } from './foundation.ts';
import { laidOver, texts, type LaidRow, type LaidRows, type Layer } from './layers.ts';
import { kindProblems, kindsFrom } from './read-kinds.ts';
import { kitsFrom, kitTableProblems } from './read-kits.ts';

function bookRow(row: LaidRow): BookRow {
  return { id: row.id, origin: row.origin, cells: texts(row) };
}

function bookRows(rows: LaidRows): ReadonlyMap<string, BookRow> {
  return new Map([...rows].map(([id, row]) => [id, bookRow(row)]));
}

function bandFrom(row: LaidRow): Band {
  const text = texts(row);
  return {
    id: row.id,
    chart: text.get('chart') ?? '',
    from: text.get('from') ?? '',
    to: text.get('to') ?? '',
    value: text.get('value') ?? '',
    source: text.get('source') ?? '',
  };
}

function fileProblems(file: FileReading | undefined): readonly Problem[] {
  if (file === undefined) return [];
  const all = [...file.problems, ...file.blocks.flatMap((block) => block.problems)];
  const faults = all.filter(({ severity }) => severity === 'error');
  const first = faults[0];
  if (first === undefined) return [];
  const details = { count: new Set(faults).size, message: first.message };
  return [bookProblem('book-file-faulty', details, { place: { table: 'job', column: 'book' } })];
}

function currencyProblems(book: string, job: string | undefined): readonly Problem[] {
  if (job === undefined || job === '' || job === book) return [];
  const place = { table: 'job', column: 'currency' };
  return [bookProblem('book-currency-differs', { job, book }, { place })];
}

type Laid = (table: BookTable) => LaidRows;

function laidOn({ tables }: Foundation, { file, job }: BookSources): Laid {
  const over: readonly Layer[] = [
    ...(file === undefined ? [] : [{ origin: 'book', tables: file.tables } as const]),
    { origin: 'job', tables: job },
  ];
  return (table) => over.reduce((under, layer) => laidOver(under, table, layer), tables[table]);
}

function kitsOf(
  ground: Foundation,
  laid: Laid,
): { readonly kits: readonly Kit[]; readonly problems: readonly Problem[] } {
  const tables = { kits: laid('kit'), questions: laid('question'), rows: laid('kit_row') };
  const { kit, question, kit_row } = ground.tables;
  const untouched = tables.kits === kit && tables.questions === question && tables.rows === kit_row;
  if (untouched) return { kits: ground.kits, problems: [] };
  return { kits: kitsFrom(tables), problems: kitTableProblems(tables) };
}

/** Kinds that a shop or a job wrote or changed; the built-in ones are known to be sound. */
function ownKinds(
  rows: LaidRows,
  kinds: ReadonlyMap<string, Kind>,
): readonly (readonly [LaidRow, Kind])[] {
  return [...rows.values()].flatMap((row) => {
    const kind = kinds.get(row.id);
    return row.origin === 'built-in' || kind === undefined ? [] : [[row, kind] as const];
  });
}

/**
 * The book a job runs on: the built-in kinds, constants and kits, the shop's book over them (or the
 * demo book with its invented prices where there is none), the job's own rows over that, key by key.
 * Never throws; what cannot be used is told in `problems` and left as far as it can be read.
 */
export function readBook(sources: BookSources): Book {
  const { file } = sources;
  const ground = foundation(file === undefined ? 'priced' : 'bare');
  const laid = laidOn(ground, sources);
  const [materials, packs, constants] = [laid('material'), laid('pack'), laid('constant')];
  const [bands, kindRows] = [laid('band'), laid('kind')];
  const kinds = kindsFrom(kindRows, ground.kinds);
  const own = ownKinds(kindRows, kinds);
  const kits = kitsOf(ground, laid);
  const head = file?.head ?? ground.head;
  const currency = head.get('currency')?.text ?? sources.currency ?? '';
  return {
    title: head.get('title')?.text ?? 'Shop book',
    currency,
    origin: file === undefined ? 'demo' : 'file',
    materials: bookRows(materials),
    constants: bookRows(constants),
    packs: [...packs.values()].map(bookRow),
    suppliers: [...laid('supplier').values()].map(bookRow),
    bands: [...bands.values()].map(bandFrom),
    kinds,
    kits: kits.kits,
    problems: [
      ...fileProblems(file),
      ...currencyProblems(currency, sources.currency),
      ...own.flatMap(([row, kind]) => kindProblems(row, kind, kinds)),
      ...materialProblems(materials),
      ...packProblems(packs, materials, currency),
      ...figureProblems(constants, bands),
      ...takenMaterialProblems(
        own.map(([, kind]) => kind),
        materials,
      ),
      ...kits.problems,
    ],
  };
}
