import type { GroupView, SheetView } from '../../extension/protocol/views.ts';

/** A line of the grid: a row, or the heading of a group of rows. */
export type Line =
  | { readonly kind: 'row'; readonly row: number; readonly key: string }
  | { readonly kind: 'group'; readonly group: GroupView };

/** The lines of a sheet, and where each row stands among them. */
export interface Lines {
  readonly all: readonly Line[];
  /** Keys of the rows that stand on lines, in display order. */
  readonly keys: readonly string[];
  /** Line number of each row, by the row's place in `keys`. */
  readonly lineOfRow: readonly number[];
  readonly rowOfKey: ReadonlyMap<string, number>;
}

/**
 * Lays out rows and group headings; a group without rows gets no heading, and one that is collapsed
 * nothing but its heading: its rows are not among the keys.
 */
export function layLines(
  sheet: Pick<SheetView, 'order' | 'groups'>,
  groupOf: (key: string) => string | undefined,
  collapsed: ReadonlySet<string> = new Set(),
): Lines {
  const groups = new Map(sheet.groups.map((group) => [group.group, group]));
  const all: Line[] = [];
  const keys: string[] = [];
  const lineOfRow: number[] = [];
  const rowOfKey = new Map<string, number>();
  let current: string | undefined;
  for (const key of sheet.order) {
    // A row that has not arrived yet stays in the group above it.
    const group = groupOf(key) ?? current;
    const heading = group === undefined ? undefined : groups.get(group);
    if (group !== current && heading !== undefined) all.push({ kind: 'group', group: heading });
    current = group;
    if (heading !== undefined && collapsed.has(heading.group)) continue;
    const row = keys.length;
    keys.push(key);
    lineOfRow.push(all.length);
    rowOfKey.set(key, row);
    all.push({ kind: 'row', row, key });
  }
  return { all, keys, lineOfRow, rowOfKey };
}

/** Whether two views of a sheet have the same columns, so that its elements may stay. */
export function sameColumns(one: SheetView | undefined, other: SheetView): boolean {
  if (one?.table !== other.table || one.columns.length !== other.columns.length) return false;
  return one.columns.every((column, index) => {
    const now = other.columns[index];
    return (
      column.key === now?.key &&
      column.label === now.label &&
      column.editor === now.editor &&
      column.align === now.align
    );
  });
}
