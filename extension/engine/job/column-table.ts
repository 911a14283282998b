import type { Dimension } from '../units/dimension.ts';
import type { Column, ColumnType } from './column.ts';

/** A column before it knows its table and group. */
export type ColumnDraft = Omit<Column, 'table' | 'group'>;

type Words = readonly [label: string, help: string];

function draft(key: string, type: ColumnType, words: Words): ColumnDraft {
  return { key, label: words[0], help: words[1], type };
}

export function text(key: string, ...words: Words): ColumnDraft {
  return draft(key, { kind: 'text' }, words);
}

export function quantity(key: string, dimension: Dimension | 'any', ...words: Words): ColumnDraft {
  return draft(key, { kind: 'quantity', dimension }, words);
}

export function choice(key: string, choices: readonly string[], ...words: Words): ColumnDraft {
  return draft(key, { kind: 'choice', choices }, words);
}

export function link(key: string, tables: readonly string[], ...words: Words): ColumnDraft {
  return draft(key, { kind: 'link', tables }, words);
}

export function yesNo(key: string, ...words: Words): ColumnDraft {
  return draft(key, { kind: 'yes-no' }, words);
}

export function shape(key: string, ...words: Words): ColumnDraft {
  return draft(key, { kind: 'shape' }, words);
}

export function date(key: string, ...words: Words): ColumnDraft {
  return draft(key, { kind: 'date' }, words);
}

export function list(key: string, ...words: Words): ColumnDraft {
  return draft(key, { kind: 'list' }, words);
}

/** The columns of a table; each inner list is one group of keys between blank lines, at most three. */
export function columnTable(
  table: string,
  groups: readonly (readonly ColumnDraft[])[],
): readonly Column[] {
  return groups.flatMap((drafts, group) => drafts.map((one) => ({ ...one, table, group })));
}
