import type { Span } from '../problems.ts';
import { scanBlock, scanHeader } from './scan-block.ts';
import type { FileReading, SourceRow } from './source.ts';

/**
 * Range in the file of a row's value (quotes included); its header where no column is asked or the
 * row has no such key. Undefined for a row of another reading.
 */
export function fileSpanOf(
  reading: FileReading,
  row: SourceRow,
  column: string | undefined,
): Span | undefined {
  const block = reading.blocks[row.block];
  if (block === undefined) return undefined;
  const { start, text } = block;
  const header = scanHeader(text, 0);
  const whole = { start, end: start + text.slice(0, header.end).trimEnd().length };
  if (column === undefined) return whole;
  const cell = row.cells.get(column);
  if (cell !== undefined) return { start: start + cell.span.start, end: start + cell.span.end };
  const entry = scanBlock(text, header.end).entries.find((one) => one.key === column);
  if (entry === undefined) return whole;
  return { start: start + entry.valueStart, end: start + entry.valueEnd };
}
