import { readFileSync, writeFileSync, existsSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';

const page = new URL('../../docs/performance.md', import.meta.url);

/** One line of a table of figures. */
export interface FigureLine {
  readonly what: string;
  readonly figure: string;
  readonly target: string;
}

/** The value below which this share of the measurements lies; throws where there are none. */
export function percentile(measured: readonly number[], share: number): number {
  const sorted = [...measured].sort((one, other) => one - other);
  const value = sorted[Math.ceil(share * sorted.length) - 1];
  if (value === undefined) throw new Error('Nothing was measured.');
  return value;
}

/** What lies between two keys of somebody who types 20 of them a second, in ms: faster than people do. */
export const keyPause = 50;

export function milliseconds(value: number): string {
  return value < 10 ? `${value.toFixed(2)} ms` : `${value.toFixed(1)} ms`;
}

export function seconds(value: number): string {
  return `${(value / 1000).toFixed(2)} s`;
}

/** How busy the machine is: programs that want to run, averaged over a minute. */
export function load(): string {
  return (loadavg()[0] ?? 0).toFixed(1);
}

/** A table as prettier would lay it out. */
function tableOf(lines: readonly (readonly string[])[]): string {
  const [head = []] = lines;
  const widths = head.map((_, column) =>
    Math.max(...lines.map((line) => line[column]?.length ?? 0)),
  );
  const rows = lines.map((line) => line.map((cell, at) => cell.padEnd(widths[at] ?? 0)));
  const rule = widths.map((width) => '-'.repeat(width));
  return [rows[0] ?? [], rule, ...rows.slice(1)].map((row) => `| ${row.join(' | ')} |`).join('\n');
}

/** Prints figures and writes them to docs/performance.md between the markers of their section. */
export function record(
  section: string,
  lines: readonly FigureLine[],
  loads: readonly [before: string, after: string],
): void {
  const table = tableOf([
    ['Measured', 'Figure', 'Target'],
    ...lines.map(({ what, figure, target }) => [what, figure, target]),
  ]);
  const machine = `${String(cpus().length)} cores, Node ${process.versions.node}, load ${loads[0]} before and ${loads[1]} after.`;
  process.stdout.write(`\n${table}\n\n${machine}\n\n`);
  if (!existsSync(page)) return;
  const text = readFileSync(page, 'utf8');
  const [from, to] = [`<!-- figures: ${section} -->`, `<!-- end: ${section} -->`];
  const [start, end] = [text.indexOf(from), text.indexOf(to)];
  if (start < 0 || end < start) throw new Error(`docs/performance.md has no place for ${section}.`);
  const before = text.slice(0, start + from.length);
  writeFileSync(page, `${before}\n\n${table}\n\n${machine}\n\n${text.slice(end)}`);
}
