/** A line of a table: its cells, or a line of text across all columns. */
export type TableLine = readonly string[] | string;

/**
 * Text in columns as wide as their widest cell, two spaces apart. `ends` names the columns whose
 * cells stand at the right.
 */
export function inColumns(lines: readonly TableLine[], ends: readonly number[]): string {
  const widths: number[] = [];
  for (const line of lines) {
    if (typeof line === 'string') continue;
    line.forEach((cell, index) => {
      widths[index] = Math.max(widths[index] ?? 0, cell.length);
    });
  }
  const shown = lines.map((line) => {
    if (typeof line === 'string') return line;
    const cells = line.map((cell, index) => {
      const width = widths[index] ?? 0;
      return ends.includes(index) ? cell.padStart(width) : cell.padEnd(width);
    });
    return cells.join('  ').trimEnd();
  });
  return shown.map((line) => `${line}\n`).join('');
}
