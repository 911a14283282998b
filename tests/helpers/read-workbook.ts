import * as xlsx from '@e965/xlsx';
import { HyperFormula, type RawCellContent } from 'hyperformula';
import { jobWorkbook, type Snapshot } from '../../extension/engine/index.ts';

/** A workbook as another program finds it. */
export interface ReadWorkbook {
  readonly values: (name: string) => readonly (readonly unknown[])[];
  readonly formulas: number;
}

/** A cell as the calculating library takes it: a formula, a text that is none, or a figure. */
function content(cell: xlsx.CellObject | undefined): RawCellContent {
  if (cell?.f !== undefined) return `=${cell.f}`;
  if (typeof cell?.v === 'string') return `'${cell.v}`;
  return typeof cell?.v === 'number' ? cell.v : null;
}

function contents(sheet: xlsx.WorkSheet): RawCellContent[][] {
  const { e } = xlsx.utils.decode_range(sheet['!ref'] ?? 'A1');
  return Array.from({ length: e.r + 1 }, (_, r) =>
    Array.from({ length: e.c + 1 }, (_none, c) =>
      content(sheet[xlsx.utils.encode_cell({ r, c })] as xlsx.CellObject | undefined),
    ),
  );
}

/** The workbook as another program opens it, with its formulas calculated anew. */
export function openedWorkbook(snapshot: Snapshot): ReadWorkbook {
  const book = xlsx.read(jobWorkbook(snapshot), { type: 'array', cellFormula: true });
  const sheets = Object.fromEntries(
    book.SheetNames.map((name) => [name, contents(book.Sheets[name] ?? {})]),
  );
  const formulas = Object.values(sheets)
    .flat(2)
    .filter((cell) => typeof cell === 'string' && cell.startsWith('=')).length;
  const engine = HyperFormula.buildFromSheets(sheets, { licenseKey: 'gpl-v3' });
  return {
    formulas,
    values: (name) => engine.getSheetValues(engine.getSheetId(name) ?? -1),
  };
}

/** Money in the row that a word begins, or follows the name of, in minor units. */
export function amountIn(read: ReadWorkbook, sheet: string, word: string, column: number): number {
  const found = read.values(sheet).find(([first, second]) => first === word || second === word);
  return Math.round(Number(found?.[column]) * 100);
}
