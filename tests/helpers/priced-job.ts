import { openSession, type Snapshot } from '../../extension/engine/index.ts';

function headOf(settings: Readonly<Record<string, string>>): string {
  const all = { title: 'Test', units: 'in', currency: 'USD', ...settings };
  const lines = Object.entries(all).map(([key, text]) => `${key} = "${text}"`);
  return `format = 1\n\n[job]\n${lines.join('\n')}\n\n`;
}

/** A row of a job file. */
export function row(table: string, id: string, cells: Readonly<Record<string, string>>): string {
  const lines = Object.entries(cells).map(([key, text]) => `${key} = '${text}'`);
  return `[[${table}]]\nid = "${id}"\n\n${lines.join('\n')}\n\n`;
}

/** A job with these settings and rows on the demo book, worked out; rows stand as they are given. */
export function jobWith(
  settings: Readonly<Record<string, string>>,
  ...rows: readonly string[]
): Snapshot {
  const ordered = rows.map((text, index) => `${text}order = ${String((index + 1) * 1000)}\n\n`);
  return openSession(`${headOf(settings)}${ordered.join('')}`).snapshot();
}

/** A job of these rows in inches and dollars. */
export function pricedJob(...rows: readonly string[]): Snapshot {
  return jobWith({}, ...rows);
}

/** A one-off cost: money in the bill without a material, taxed and marked up. */
export function cost(
  id: string,
  price: string,
  more: Readonly<Record<string, string>> = {},
): string {
  return row('part', id, { kind: 'extra', price, taxed: 'yes', marked_up: 'yes', ...more });
}

/** A task of so many minutes, once for the job. */
export function task(
  id: string,
  minutes: string,
  more: Readonly<Record<string, string>> = {},
): string {
  return row('task', id, { kind: 'clean', minutes, ...more });
}

export function charge(
  id: string,
  kind: string,
  more: Readonly<Record<string, string>> = {},
): string {
  return row('charge', id, { kind, ...more });
}
