import { HyperFormula, type RawCellContent, type SimpleCellAddress } from 'hyperformula';
import { EvaluatorFunctions, type EvaluatorContext } from './evaluator-functions.ts';
import type { Cell, Row } from './row.ts';
import { cellWriter, gap, type GappedFormula } from './formula-templates.ts';
import { orderHere } from './recalculation-order.ts';

const names = Object.fromEntries(
  Object.keys(EvaluatorFunctions.implementedFunctions).map((name) => [name, name]),
);
HyperFormula.registerFunctionPlugin(EvaluatorFunctions, { enGB: names });

/** Rows beyond the largest job by far; slots are used again. */
const mostRows = 200_000;

function settings(context: EvaluatorContext): Parameters<typeof HyperFormula.buildEmpty>[0] {
  return {
    licenseKey: 'gpl-v3',
    maxRows: mostRows,
    undoLimit: 0,
    // Nothing is guessed: `5-3/4` would else become a date.
    parseDateTime: () => undefined,
    currencySymbol: [],
    // A blank stays a blank through references, so that our functions can tell it from 0.
    evaluateNullToZero: false,
    precisionRounding: 12,
    smartRounding: true,
    useColumnIndex: false,
    useWildcards: false,
    context,
  };
}

/** What a cell of the evaluator is given. */
export type Content = RawCellContent | GappedFormula;

/** What stands in a cell of the evaluator after a change. */
export interface Change {
  readonly cell: Cell;
  readonly raw: unknown;
}

interface SheetPlan {
  readonly index: number;
  readonly columns: Map<string, number>;
  /** By row, then by column. */
  readonly cells: (Cell | undefined)[][];
  readonly free: number[];
  next: number;
}

function isGapped(content: Content): content is GappedFormula {
  return typeof content === 'object' && content !== null && 'fillings' in content;
}

function letters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : letters(Math.floor(column / 26) - 1) + last;
}

/**
 * HyperFormula as a file of registers: one sheet a table, a fixed row for each of ours, a column for
 * each key. Nothing in it is ever moved, and it holds no text that a person wrote.
 */
export interface RegisterFile {
  /** Where a cell stands; gives it a place when it has none. */
  readonly standing: (cell: Cell) => SimpleCellAddress;
  /** An address as formulas write it. */
  readonly written: (address: SimpleCellAddress) => string;
  /** A place where nothing ever stands. */
  readonly nothing: SimpleCellAddress;
  readonly write: (contents: Iterable<readonly [Cell, Content]>) => readonly Change[];
  /** Formula texts that the evaluator has been given, each of which it keeps. */
  readonly texts: () => number;
  /** Takes a row's cells out and frees its place; the emptied cells are written with the next change. */
  readonly release: (row: Row) => void;
  readonly calculate: (formula: GappedFormula) => unknown;
  readonly numberAt: (address: SimpleCellAddress) => number;
  readonly cellAt: (address: SimpleCellAddress) => Cell | undefined;
  readonly cellNamed: (address: string) => Cell | undefined;
  readonly revision: (row: Row) => SimpleCellAddress;
  /** Counts all revisions on: every call that looks at one is answered anew. */
  readonly revise: () => readonly Change[];
  readonly close: () => void;
}

export function openRegisterFile(context: EvaluatorContext): RegisterFile {
  const hf = HyperFormula.buildEmpty(settings(context));
  orderHere(hf);
  const plans = new Map<string, SheetPlan>();
  const sheets: SheetPlan[] = [];
  const emptied: SimpleCellAddress[] = [];
  const revisions = new Map<string, number>();
  const sheetIndex = (name: string): number => hf.getSheetId(hf.addSheet(name)) ?? 0;
  const scratch = sheetIndex('scratch');
  let revised = 0;
  const revisionSheet = sheetIndex('revision');

  function plan(table: string): SheetPlan {
    const known = plans.get(table);
    if (known !== undefined) return known;
    const index = sheetIndex(table);
    const made = { index, columns: new Map(), cells: [], free: [], next: 0 };
    plans.set(table, made);
    sheets[index] = made;
    return made;
  }

  function placed(cell: Cell): SimpleCellAddress {
    const sheet = plan(cell.row.table);
    const row = (cell.row.slot ??= sheet.free.pop() ?? sheet.next++);
    if (cell.placed === undefined) {
      const column = sheet.columns.get(cell.column) ?? sheet.columns.size;
      sheet.columns.set(cell.column, column);
      cell.placed = column;
      (sheet.cells[row] ??= [])[column] = cell;
    }
    return { sheet: sheet.index, row, col: cell.placed };
  }

  const cellAt = ({ sheet, row, col }: SimpleCellAddress): Cell | undefined =>
    sheets[sheet]?.cells[row]?.[col];

  function found(changes: ReturnType<HyperFormula['resumeEvaluation']>): Change[] {
    const cells: Change[] = [];
    for (const change of changes) {
      const cell = 'address' in change ? cellAt(change.address) : undefined;
      if (cell !== undefined) cells.push({ cell, raw: change.newValue });
    }
    return cells;
  }

  const written = ({ sheet, row, col }: SimpleCellAddress): string =>
    `${hf.getSheetName(sheet) ?? ''}!$${letters(col)}$${row + 1}`;

  function filled({ text, fillings }: GappedFormula): string {
    const texts = fillings.map((one) => (typeof one === 'number' ? String(one) : written(one)));
    return text.split(gap).reduce((start, rest, index) => start + (texts[index - 1] ?? '') + rest);
  }

  const writer = cellWriter(hf, filled);

  function put(at: SimpleCellAddress, content: Content): void {
    if (isGapped(content)) writer.formula(at, content);
    else writer.content(at, content);
  }

  function changed(contents: Iterable<readonly [Cell, Content]>): readonly Change[] {
    const written = new Set<Cell>();
    // Not batch(): it keeps an undo entry a cell and looks through all of them for each further cell.
    hf.suspendEvaluation();
    for (const address of emptied.splice(0)) writer.content(address, null);
    for (const [cell, content] of contents) {
      put(placed(cell), content);
      written.add(cell);
    }
    const changes = found(hf.resumeEvaluation());
    for (const { cell } of changes) written.delete(cell);
    for (const cell of written) changes.push({ cell, raw: hf.getCellValue(placed(cell)) });
    return changes;
  }

  return {
    standing: placed,
    written,
    nothing: { sheet: scratch, row: 0, col: 0 },
    write: changed,
    texts: writer.parsed,
    release: (row) => {
      const sheet = plan(row.table);
      if (row.slot === undefined) return;
      for (const cell of row.cells.values()) {
        if (cell.placed === undefined) continue;
        emptied.push({ sheet: sheet.index, row: row.slot, col: cell.placed });
        cell.placed = undefined;
      }
      sheet.cells[row.slot] = [];
      sheet.free.push(row.slot);
      row.slot = undefined;
    },
    calculate: (formula) => hf.calculateFormula(`=${filled(formula)}`, scratch),
    cellAt,
    numberAt: (address) => cellAt(address)?.number ?? -1,
    cellNamed: (address) => {
      const found = hf.simpleCellAddressFromString(address, scratch);
      return found === undefined ? undefined : cellAt(found);
    },
    revise: () => {
      revised += 1;
      hf.suspendEvaluation();
      for (const row of revisions.values())
        hf.setCellContents({ sheet: revisionSheet, row, col: 0 }, revised);
      return found(hf.resumeEvaluation());
    },
    revision: (row) => {
      const at = revisions.get(row.key) ?? revisions.size;
      if (!revisions.has(row.key)) {
        revisions.set(row.key, at);
        writer.content({ sheet: revisionSheet, row: at, col: 0 }, 0);
      }
      return { sheet: revisionSheet, row: at, col: 0 };
    },
    close: () => {
      hf.destroy();
    },
  };
}
