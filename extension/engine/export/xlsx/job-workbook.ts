import type { Check } from '../../estimate/checks/check.ts';
import { shownCell } from '../../estimate/cells.ts';
import { minorDigits } from '../../estimate/money.ts';
import type { Column } from '../../job/column.ts';
import { columnsOf } from '../../job/columns.ts';
import type { FileReading } from '../../job/source.ts';
import { standardUnit } from '../../units/standard-units.ts';
import { unitOf } from '../../units/unit-words.ts';
import type { AnsweredCell, AnsweredRow } from '../../workbook/answers.ts';
import { billSheet, packsSheet, priceSheet, tasksSheet, type MoneyGround } from './money-sheets.ts';
import { figure, headings, textCell, type Sheet, type SheetCell } from './sheet.ts';
import { writeSheets } from './write-sheets.ts';

/** What a workbook is written from: a snapshot has it all. */
export interface WorkbookGround extends MoneyGround {
  readonly shown: FileReading;
  readonly checks: readonly Check[];
}

/** Unit of a column whose figures all have one dimension; undefined where figures carry their own. */
function unitFor({ type }: Column, ground: WorkbookGround): string | undefined {
  if (type.kind !== 'quantity' || type.dimension === 'any') return undefined;
  return standardUnit(type.dimension, ground.settings);
}

// A temperature is a point on its scale and no multiple of a unit: it stays in words.
function cellOf(
  cell: AnsweredCell,
  unit: string | undefined,
  ground: WorkbookGround,
): SheetCell | undefined {
  const { result } = cell;
  const factor = unit === undefined ? undefined : unitOf(unit, ground.settings)?.factor;
  if (result.state === 'value' && result.value.kind === 'quantity' && factor !== undefined) {
    const { base, dimension } = result.value;
    if (dimension.tag !== 'point') return figure(base / factor, 'number');
  }
  return textCell(shownCell(cell, ground.settings));
}

function tableSheet(name: string, table: string, ground: WorkbookGround): Sheet {
  const rows = ground.workbook.rows(table).filter(({ broken }) => !broken);
  const filled = (row: AnsweredRow, { key }: Column): boolean =>
    row.cell(key).result.state !== 'blank';
  const columns = columnsOf(ground.shown, table).filter((column) =>
    rows.some((row) => filled(row, column)),
  );
  const units = columns.map((column) => unitFor(column, ground));
  const labels = columns.map(({ label }, index) => {
    const unit = units[index];
    return unit === undefined || unit === '' ? label : `${label} (${unit})`;
  });
  const lines = rows.map((row) => [
    textCell(row.id),
    ...columns.map(({ key }, index) => cellOf(row.cell(key), units[index], ground)),
  ]);
  return { name, rows: [headings('id', ...labels), ...lines] };
}

function checksSheet({ checks }: WorkbookGround): Sheet {
  const lines = checks.map(({ id, name, outcome, level, message }) =>
    [id, name, outcome, level, message].map(textCell),
  );
  return { name: 'Checks', rows: [headings('Id', 'Check', 'Outcome', 'Level', 'Says'), ...lines] };
}

/** The sheets of a job's workbook: its tables, and its money with formulas. */
export function jobSheets(ground: WorkbookGround): readonly Sheet[] {
  return [
    priceSheet(ground),
    billSheet(ground),
    packsSheet(ground),
    tasksSheet(ground),
    tableSheet('Parts', 'part', ground),
    tableSheet('Panels', 'panel', ground),
    tableSheet('Drivers', 'driver', ground),
    tableSheet('Measures', 'measure', ground),
    tableSheet('Charges', 'charge', ground),
    checksSheet(ground),
  ];
}

/**
 * A job as a workbook (XLSX): every sheet, with units in the headings and formulas where they come to
 * the same cent; where they would not, the figure stands alone.
 */
export function jobWorkbook(ground: WorkbookGround): Uint8Array {
  return writeSheets(jobSheets(ground), minorDigits(ground.price.currency));
}
