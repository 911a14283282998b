import type { Row } from './row.ts';
import type { RowStore } from './row-store.ts';

/** Text of a link cell: the id it names; undefined where it names nothing. */
export function linkText(row: Row, column: string): string | undefined {
  const text = row.cells.get(column)?.text?.text;
  return text === undefined || text.startsWith('=') ? undefined : text;
}

/** The row that a row stands on; undefined where there is none, or two of that name. */
export function groundOf(row: Row, store: RowStore): Row | undefined {
  const on = linkText(row, 'on');
  if (on === undefined) return undefined;
  const found = store.inJob(on);
  return found.length === 1 && found[0] !== row ? found[0] : undefined;
}

/** The rows that a row stands on, nearest first. A loop of links ends where it closes. */
export function groundsOf(row: Row, store: RowStore): readonly Row[] {
  const grounds: Row[] = [];
  let ground = groundOf(row, store);
  while (ground !== undefined && ground !== row && !grounds.includes(ground)) {
    grounds.push(ground);
    ground = groundOf(ground, store);
  }
  return grounds;
}
