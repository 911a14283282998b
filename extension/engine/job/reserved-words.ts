import { isUnitWord } from '../units/unit-words.ts';
import { coreColumns, namedRowTables, tableOrder } from './columns.ts';

/** Words with a place of their own in formulas or in the file. */
const roots = ['job', 'book', 'all', 'draw', 'id', 'order', 'none', 'true', 'false'];

const linkWords: ReadonlySet<string> = new Set(
  tableOrder
    .flatMap(coreColumns)
    .filter((column) => column.type.kind === 'link')
    .map((column) => column.key)
    .concat('on'),
);

/** True for a word that no row of this table may be called. */
export function isReservedId(table: string, id: string): boolean {
  if (isUnitWord(id) || roots.includes(id)) return true;
  return (namedRowTables.includes(table) || table === 'column') && linkWords.has(id);
}

const idPattern = /^[a-z][a-z0-9_]*$/;

/** True for the form of an id: a small letter, then small letters, digits and `_`. */
export function isWellFormedId(id: string): boolean {
  return idPattern.test(id);
}
