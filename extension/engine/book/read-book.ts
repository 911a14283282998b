import type { FileReading } from '../job/source.ts';
import type { Problem } from '../problems.ts';
import { bookProblem } from './book-problems.ts';
import type { Band, Book, BookRow, BookSources } from './book.ts';
import { builtIn } from './built-in.ts';
import {
  figureProblems,
  materialProblems,
  packProblems,
  takenMaterialProblems,
} from './check-book.ts';
import { bookLayers, laidRows, texts, type LaidRow } from './layers.ts';
import { kindProblems, kindsFrom } from './read-kinds.ts';
import { kitsFrom, kitTableProblems } from './read-kits.ts';

function bookRow(row: LaidRow): BookRow {
  return { id: row.id, origin: row.origin, cells: texts(row) };
}

function bookRows(rows: ReadonlyMap<string, LaidRow>): ReadonlyMap<string, BookRow> {
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

/**
 * The book a job runs on: the built-in kinds, constants and kits, the shop's book over them (or the
 * demo book with its invented prices where there is none), the job's own rows over that, key by key.
 * Never throws; what cannot be used is told in `problems` and left as far as it can be read.
 */
export function readBook(sources: BookSources): Book {
  const { file, job } = sources;
  const layers = bookLayers(file, job);
  const table = (name: string): ReadonlyMap<string, LaidRow> => laidRows(name, layers);
  const [materials, packs, constants] = [table('material'), table('pack'), table('constant')];
  const [bands, kindRows] = [table('band'), table('kind')];
  const kitTables = { kits: table('kit'), questions: table('question'), rows: table('kit_row') };
  const kinds = kindsFrom(kindRows);
  const head = (file ?? builtIn().demo).head;
  const currency = head.get('currency')?.text ?? sources.currency ?? '';
  return {
    title: head.get('title')?.text ?? 'Shop book',
    currency,
    origin: file === undefined ? 'demo' : 'file',
    materials: bookRows(materials),
    constants: bookRows(constants),
    packs: [...packs.values()].map(bookRow),
    bands: [...bands.values()].map(bandFrom),
    kinds,
    kits: kitsFrom(kitTables),
    problems: [
      ...fileProblems(file),
      ...currencyProblems(currency, sources.currency),
      ...[...kinds].flatMap(([id, kind]) => {
        const row = kindRows.get(id);
        return row === undefined ? [] : kindProblems(row, kind, kinds);
      }),
      ...materialProblems(materials),
      ...packProblems(packs, materials, currency),
      ...figureProblems(constants, bands),
      ...takenMaterialProblems(kinds, materials),
      ...kitTableProblems(kitTables),
    ],
  };
}
