/** Key of a row in sets and maps: `part/mid_ring#0`. */
export function rowKey(row: {
  readonly table: string;
  readonly id: string;
  readonly occurrence?: number;
}): string {
  return `${row.table}/${row.id}#${String(row.occurrence ?? 0)}`;
}
