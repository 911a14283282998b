import type { FunctionEntry } from '../../extension/engine/formula/catalogue.ts';
import { readBook } from '../../extension/engine/book/read-book.ts';
import type { Book } from '../../extension/engine/book/book.ts';
import { makeCatalogue } from '../../extension/engine/formula/make-catalogue.ts';
import { standardFunctions } from '../../extension/engine/formula/standard/standard-functions.ts';
import { readChange, readFile } from '../../extension/engine/job/read-file.ts';
import type { FileReading } from '../../extension/engine/job/source.ts';
import { skinFunctions } from '../../extension/engine/skin/skin-functions.ts';
import { tradeFunctions } from '../../extension/engine/trade/trade-functions.ts';
import type { UnitSettings } from '../../extension/engine/units/quantity.ts';
import { showQuantity } from '../../extension/engine/units/show.ts';
import { showShape } from '../../extension/engine/geometry/shape-text.ts';
import type { CellResult } from '../../extension/engine/workbook/answers.ts';
import {
  openWorkbook,
  type Workbook,
  type WorkbookChanges,
} from '../../extension/engine/workbook/workbook.ts';

export const catalogue = makeCatalogue([...standardFunctions, ...tradeFunctions, ...skinFunctions]);

/** All functions, and some of a test's own. */
export function catalogueWith(...entries: readonly FunctionEntry[]): typeof catalogue {
  return makeCatalogue([...standardFunctions, ...tradeFunctions, ...skinFunctions, ...entries]);
}

const inches: UnitSettings = { units: 'in', currency: 'USD' };

/** A result as a person reads it: `5 1/2 in`, `yes`, an empty text for blank, the sentence of a problem. */
export function said(result: CellResult, settings: UnitSettings = inches): string {
  if (result.state === 'blank') return '';
  if (result.state === 'no-answer') return result.problem.message;
  const { value } = result;
  switch (value.kind) {
    case 'quantity':
      return showQuantity(value, settings).text;
    case 'text':
      return value.text;
    case 'yes-no':
      return value.yes ? 'yes' : 'no';
    case 'choice':
      return value.word;
    case 'link':
      return value.id;
    case 'shape':
      return showShape(value.shape, settings);
  }
}

/** A job on the bench: its text, and what its cells say. */
export interface Sheet {
  readonly workbook: Workbook;
  readonly reading: () => FileReading;
  readonly text: () => string;
  /** What a cell says, by `table/id.column`, `id.column` (a part) or `job.key`. */
  readonly says: (cell: string) => string;
  readonly result: (cell: string) => CellResult;
  readonly base: (cell: string) => number;
  /** Replaces the first place where `before` stands in the text. */
  readonly change: (before: string, after: string) => WorkbookChanges;
  readonly setText: (text: string) => WorkbookChanges;
  readonly codes: () => readonly string[];
}

interface SheetOptions {
  readonly book?: string;
  readonly functions?: typeof catalogue;
}

const start = 'format = 1\n\n';

function placeOf(cell: string): { table: string; id: string; occurrence: number; column: string } {
  const [, table = 'part', id = '', nth = '0', column = ''] =
    /^(?:(\w+)\/)?([^.#]*)(?:#(\d))?\.(.*)$/.exec(cell) ?? [];
  return { table: id === 'job' ? 'job' : table, id, occurrence: Number(nth), column };
}

/** Opens a job given without its first line, on the demo book or on one given likewise. */
export function sheet(job: string, options: SheetOptions = {}): Sheet {
  const bookFile = options.book === undefined ? undefined : readFile(start + options.book);
  const bookOf = (reading: FileReading): Book =>
    readBook({
      job: reading.tables,
      ...(bookFile === undefined ? {} : { file: bookFile }),
    });
  let reading = readFile(start + job);
  let book = bookOf(reading);
  const workbook = openWorkbook(reading, book, options.functions ?? catalogue);

  function setText(text: string): WorkbookChanges {
    const next = readChange(reading, text);
    const bookTables = ['material', 'pack', 'supplier', 'constant', 'band', 'kind', 'price'];
    if (bookTables.some((table) => reading.tables.get(table) !== next.tables.get(table))) {
      book = bookOf(next);
    }
    reading = next;
    return workbook.update(reading, book);
  }

  function result(cell: string): CellResult {
    const { table, id, occurrence, column } = placeOf(cell);
    if (table === 'job') return workbook.setting(column);
    const row = workbook.rows(table).find((one) => one.id === id && one.occurrence === occurrence);
    if (row === undefined) throw new Error(`There is no row ${table}/${id}`);
    return row.cell(column).result;
  }

  return {
    workbook,
    reading: () => reading,
    text: () => reading.text,
    result,
    says: (cell) => said(result(cell)),
    base: (cell) => {
      const found = result(cell);
      if (found.state !== 'value' || found.value.kind !== 'quantity') return Number.NaN;
      return found.value.base;
    },
    setText,
    change: (before, after) => {
      if (!reading.text.includes(before)) throw new Error(`The job has no “${before}”`);
      return setText(reading.text.replace(before, () => after));
    },
    codes: () => workbook.problems.map((problem) => problem.code),
  };
}
