import type { Book } from '../book/book.ts';
import type { Catalogue } from '../formula/catalogue.ts';
import type { CellValue } from '../formula/value.ts';
import type { FileReading } from '../job/source.ts';
import { failed, ok, type Result } from '../result.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { openWorkbook } from './workbook.ts';
import { workbookProblem } from './workbook-problems.ts';

const noBook: Book = {
  title: '',
  currency: 'USD',
  origin: 'demo',
  materials: new Map(),
  constants: new Map(),
  packs: [],
  suppliers: [],
  bands: [],
  kinds: new Map(),
  kits: [],
  problems: [],
};

function emptyReading(settings: UnitSettings): FileReading {
  const span = { start: 0, end: 0 };
  const cell = (text: string) => ({ text, form: 'string', span }) as const;
  return {
    text: '',
    blocks: [],
    head: new Map([
      ['units', cell(settings.units)],
      ['currency', cell(settings.currency)],
    ]),
    tables: new Map(),
    format: 1,
    state: 'readable',
    problems: [],
  };
}

/** Answers formulas and values that stand in no job, one after the other. */
export type Calculator = (text: string) => Result<{ readonly value: CellValue }>;

/** A calculator that is asked more than once; `book` gives its constants and charts. */
export function openCalculator(
  settings: UnitSettings,
  catalogue: Catalogue,
  book: Book = noBook,
): Calculator {
  const workbook = openWorkbook(emptyReading(settings), book, catalogue);
  const place = { table: 'measure', id: 'answer', occurrence: 0, column: 'value' };
  return (text) => {
    const column = text.startsWith('=') ? 'answer' : 'value';
    const result = workbook.tryText({ ...place, column }, text);
    if (result.state === 'value') return ok({ value: result.value });
    const problem =
      result.state === 'blank'
        ? workbookProblem('cell-blank', { name: 'The answer' })
        : result.problem;
    // It stands in no job, so its problem has no place either.
    const { code, message, severity, span } = problem;
    return failed({ code, message, severity, ...(span === undefined ? {} : { span }) });
  };
}

/** Answers one formula or value that stands in no job; `book` gives its constants and charts. */
export function calculate(
  text: string,
  settings: UnitSettings,
  catalogue: Catalogue,
  book: Book = noBook,
): Result<{ readonly value: CellValue }> {
  return openCalculator(settings, catalogue, book)(text);
}
