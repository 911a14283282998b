import { extentOf } from '../job/edit-rows.ts';
import { indexed } from '../job/read-file.ts';
import type { FileReading } from '../job/source.ts';
import { newlineOf } from '../job/text-lines.ts';

/** Index of the head's block; −1 where there is none. */
export function headBlock(reading: FileReading): number {
  return indexed(reading).split.parsed.findIndex(({ role }) => role === 'head');
}

/** The value of a key as the file spells it; undefined where the block does not hold the key. */
export function speltValue(reading: FileReading, block: number, key: string): string | undefined {
  const parsed = indexed(reading).split.parsed[block];
  const entry = parsed?.entries.find((one) => one.key === key);
  return entry === undefined ? undefined : parsed?.text.slice(entry.valueStart, entry.valueEnd);
}

/** A block's lines with the comments that belong to it, the last one closed by a line break. */
export function blockLines(reading: FileReading, block: number): string {
  const { start, end } = extentOf(indexed(reading), block);
  const text = reading.text.slice(start, end);
  return text.endsWith('\n') ? text : text + newlineOf(reading.text);
}

/** The same lines with the line breaks of another file. */
export function withBreaksOf(text: string, lines: string): string {
  return lines.replaceAll(/\r?\n/g, newlineOf(text));
}
