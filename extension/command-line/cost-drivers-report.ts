import { priceChangeText, type CostDriver } from '../engine/index.ts';
import { inColumns, type TableLine } from './columns.ts';
import type { ReadJob } from './job.ts';

/** A line a cell: what it says, and what a tenth less and a tenth more of it do to the price. */
export function costDriversReport({ snapshot }: ReadJob, found: readonly CostDriver[]): string {
  const { currency } = snapshot.bill;
  if (found.length === 0) return 'No typed cell moves the price.\n';
  const rows: TableLine[] = [
    ['Cell', 'Says', '10 % less', '10 % more', ''],
    ...found.map((one) => [
      `${one.id}.${one.column}`,
      one.text,
      priceChangeText(one.less, currency),
      priceChangeText(one.more, currency),
      one.name,
    ]),
  ];
  return inColumns(rows, [2, 3]);
}

/** What `costdrivers --json` prints. */
export function costDriversJson({ file, snapshot }: ReadJob, found: readonly CostDriver[]): object {
  const { currency } = snapshot.bill;
  const money = (minor: number | undefined): object | null =>
    minor === undefined ? null : { minor, currency };
  return {
    format: 1,
    file,
    drivers: found.map(({ table, id, column, name, text, less, more }) => {
      return { table, id, column, name, text, less: money(less), more: money(more) };
    }),
  };
}
