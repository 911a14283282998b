import type { Problem } from '../problems.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { Column } from './column.ts';
import { columnOf, coreColumns, headColumns, tableOrder, tablePlace } from './columns.ts';
import { fileProblem } from './file-problems.ts';
import { nearestWord } from './nearest-word.ts';
import { isBareNumber, type ParsedBlock } from './parse-block.ts';
import type { Finding } from './read-body.ts';
import type { SourceRow } from './source.ts';
import { userColumnKey, userColumns, userColumnType } from './user-columns.ts';

/** What the problems of a block depend on besides its text. */
export interface ProblemContext {
  readonly settings: UnitSettings;
  /** Rows of table `column`. */
  readonly columnRows: readonly SourceRow[];
}

function nearText(word: string, words: readonly string[]): string {
  const near = nearestWord(word, words);
  return near === undefined ? '' : ` Is ${near} meant?`;
}

function named(block: ParsedBlock, row: SourceRow | undefined): string {
  if (row !== undefined) return row.id === '' ? `this ${row.table}` : `${row.table} ${row.id}`;
  return block.header === undefined ? 'the top of the file' : `[${block.header.name}]`;
}

function findingProblem(finding: Finding, block: ParsedBlock, row: SourceRow | undefined): Problem {
  const { start, end, column } = finding;
  const details = { row: named(block, row), ...finding.details };
  const place =
    row === undefined
      ? block.role === 'head'
        ? { table: block.header?.name ?? 'job' }
        : undefined
      : { table: row.table, row: row.id, occurrence: row.occurrence };
  return fileProblem(finding.code, details, {
    ...(place === undefined ? {} : { place: column === undefined ? place : { ...place, column } }),
    fileSpan:
      end > 0
        ? { start, end }
        : { start: 0, end: block.text.slice(0, block.headerEnd).trimEnd().length },
  });
}

function keySpan(block: ParsedBlock, key: string): { start: number; end: number } {
  const entry = block.entries.find((one) => one.key === key);
  return { start: entry?.lineStart ?? 0, end: entry?.valueEnd ?? 0 };
}

function bareProblem(
  block: ParsedBlock,
  row: SourceRow | undefined,
  column: Column,
  settings: UnitSettings,
): Problem[] {
  const cell = block.cells.get(column.key);
  if (cell === undefined || column.type.kind !== 'quantity') return [];
  const table = block.header?.name ?? '';
  const place =
    row === undefined
      ? { table, column: column.key }
      : { table, row: row.id, occurrence: row.occurrence, column: column.key };
  const wanted = column.type.dimension;
  const read = readQuantity(cell.text, { settings, wanted, strict: true, place });
  return read.ok ? [] : [{ ...read.problem, place, fileSpan: cell.span }];
}

function unknownKey(
  block: ParsedBlock,
  row: SourceRow | undefined,
  key: string,
  known: readonly Column[],
): Problem {
  const table = block.header?.name ?? '';
  const near = nearText(key, [...known.map((column) => column.key), 'order']);
  const place =
    row === undefined
      ? { table, column: key }
      : { table, row: row.id, occurrence: row.occurrence, column: key };
  return fileProblem('key-unknown', { key, table, near }, { place, fileSpan: keySpan(block, key) });
}

function unknownKeys(
  block: ParsedBlock,
  row: SourceRow | undefined,
  context: ProblemContext,
): readonly Problem[] {
  if (block.role === 'top') {
    return block.unknown.map((key) =>
      fileProblem('key-outside', { key }, { fileSpan: keySpan(block, key) }),
    );
  }
  if (block.role === 'head') {
    const known = headColumns(block.header?.name === 'book' ? 'book' : 'job');
    return block.unknown.map((key) => unknownKey(block, row, key, known));
  }
  if (row === undefined) return [];
  const core = coreColumns(row.table);
  const added = userColumns(context.columnRows, row.table, core);
  return block.unknown.flatMap((key) => {
    const column = added.find((one) => one.key === key);
    if (column === undefined) return [unknownKey(block, row, key, [...core, ...added])];
    return isBareNumber(block.cells.get(key)?.text ?? '')
      ? bareProblem(block, row, column, context.settings)
      : [];
  });
}

function columnRowProblems(block: ParsedBlock, row: SourceRow): readonly Problem[] {
  if (row.table !== 'column' || row.broken) return [];
  const table = row.cells.get('table')?.text ?? '';
  const key = userColumnKey(row);
  const type = row.cells.get('type')?.text ?? 'text';
  const at = (column: string): Partial<Problem> => ({
    place: { table: 'column', row: row.id, occurrence: row.occurrence, column },
    fileSpan: keySpan(block, column),
  });
  const problems: Problem[] = [];
  if (tablePlace(table) === undefined) {
    problems.push(fileProblem('column-table-unknown', { table }, at('table')));
  } else if (columnOf(table, key) !== undefined) {
    problems.push(fileProblem('column-taken', { table, key }, at('key')));
  }
  if (userColumnType(type, undefined) === undefined) {
    problems.push(fileProblem('column-type-unknown', { type }, at('type')));
  }
  return problems;
}

function unknownTable(block: ParsedBlock): readonly Problem[] {
  if (block.role !== 'other' || block.broken) return [];
  const table = block.header?.name ?? '';
  const near = nearText(table, [...tableOrder, 'job', 'book']);
  const fileSpan = { start: 0, end: block.text.slice(0, block.headerEnd).trimEnd().length };
  return [fileProblem('table-unknown', { table, near }, { fileSpan })];
}

/** Everything to tell about one block; ranges count from the block's start. */
export function blockProblems(
  block: ParsedBlock,
  row: SourceRow | undefined,
  context: ProblemContext,
): readonly Problem[] {
  const table = block.header?.name ?? '';
  const bare = block.bare.flatMap((key) => {
    const column = columnOf(table, key);
    return column === undefined ? [] : bareProblem(block, row, column, context.settings);
  });
  return [
    ...block.findings.map((finding) => findingProblem(finding, block, row)),
    ...unknownTable(block),
    ...bare,
    ...unknownKeys(block, row, context),
    ...(row === undefined ? [] : columnRowProblems(block, row)),
  ];
}

/** True for a block that may have problems at all. */
export function mayHaveProblems(block: ParsedBlock): boolean {
  return (
    block.findings.length > 0 ||
    block.unknown.length > 0 ||
    block.bare.length > 0 ||
    block.role === 'other' ||
    block.header?.name === 'column'
  );
}
