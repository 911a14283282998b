import { parse, TomlDate, TomlError } from 'smol-toml';
import type { Entry } from './scan-block.ts';
import type { SourceCell } from './source.ts';

type Table = Readonly<Record<string, unknown>>;

function isTable(value: unknown): value is Table {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Values of a run of `key = value` lines, or the reason why it is not TOML. */
export function tomlValues(text: string): { readonly table: Table } | { readonly reason: string } {
  try {
    return { table: parse(text) };
  } catch (fault) {
    if (!(fault instanceof TomlError)) throw fault;
    const [first = ''] = fault.message.split('\n');
    return { reason: first.replace(/^Invalid TOML document: /, '') };
  }
}

/** The value that a dotted key leads to; undefined where the table has none. */
export function valueAt(table: Table, words: readonly string[]): unknown {
  return words.reduce<unknown>(
    (value, word) => (isTable(value) && Object.hasOwn(value, word) ? value[word] : undefined),
    table,
  );
}

function formOf(value: unknown, spelling: string): SourceCell['form'] {
  if (typeof value === 'string') return 'string';
  if (typeof value === 'boolean') return 'boolean';
  if (value instanceof TomlDate) return 'date';
  if (Array.isArray(value)) return 'array';
  if (typeof value === 'object') return 'table';
  return /^[+-]?(?:[\d_]+|0[xob][\da-fA-F_]+)$/.test(spelling) ? 'integer' : 'float';
}

/** A cell from its value and its spelling in the block. */
export function cellOf(value: unknown, block: string, entry: Entry): SourceCell {
  const spelling = block.slice(entry.valueStart, entry.valueEnd);
  const form = formOf(value, spelling);
  const span = { start: entry.valueStart, end: entry.valueEnd };
  const text = typeof value === 'string' ? value : spelling;
  const items: readonly unknown[] | undefined = Array.isArray(value) ? value : undefined;
  return items?.every((item): item is string => typeof item === 'string') === true
    ? { text, form, span, items }
    : { text, form, span };
}
