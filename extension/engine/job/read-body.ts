import type { FileProblemCode } from './file-problems.ts';
import type { Entry, ScannedBlock } from './scan-block.ts';
import type { SourceCell } from './source.ts';
import { cellOf, tomlValues, valueAt } from './toml-values.ts';

/** Something to tell about a block; offsets count from its start. */
export interface Finding {
  readonly code: FileProblemCode;
  readonly details: Readonly<Record<string, string>>;
  readonly start: number;
  readonly end: number;
  readonly column?: string;
}

const scalar =
  /^(?:true|false|[+-]?(?:inf|nan|[\d_]+(?:\.[\d_]+)?(?:[eE][+-]?[\d_]+)?|0[xob][\da-fA-F_]+)|\d{4}-\d\d-\d\d(?:[Tt ].*)?|\d\d:\d\d.*)$/;

/** The line a problem quotes, not longer than a line on the screen. */
export function shortened(text: string): string {
  const line = text.trim();
  return line.length > 60 ? `${line.slice(0, 59)}…` : line;
}

function scanFinding(text: string, scanned: ScannedBlock): Finding | undefined {
  const unquoted = scanned.entries.find((entry) => {
    const letter = text[entry.valueStart] ?? '';
    const value = text.slice(entry.valueStart, entry.valueEnd);
    return value !== '' && !'"\'[{'.includes(letter) && !scalar.test(value);
  });
  const [first] = scanned.faults;
  if (first !== undefined && (unquoted === undefined || first.start <= unquoted.lineStart)) {
    const { code, start, end, key = '' } = first;
    return { code, details: { key, text: shortened(text.slice(start, end)) }, start, end };
  }
  if (unquoted !== undefined) {
    const { key, valueStart: start, valueEnd: end } = unquoted;
    return { code: 'value-unquoted', details: { key, text: text.slice(start, end) }, start, end };
  }
  const seen = new Set<string>();
  for (const { key, lineStart, valueStart } of scanned.entries) {
    if (seen.has(key)) {
      return { code: 'key-repeated', details: { key }, start: lineStart, end: valueStart };
    }
    seen.add(key);
  }
  return undefined;
}

/** Cells of a block by key; only those that can be read by themselves where there is a fault. */
export interface Body {
  readonly cells: Map<string, SourceCell>;
  readonly fault?: Finding;
}

function brokenBody(text: string, entries: readonly Entry[], fault: Finding): Body {
  const cells = new Map<string, SourceCell>();
  for (const entry of entries) {
    if (cells.has(entry.key)) continue;
    const alone = tomlValues(`value = ${text.slice(entry.valueStart, entry.valueEnd)}`);
    if (!('table' in alone)) continue;
    cells.set(entry.key, cellOf(alone.table['value'], text, entry));
  }
  return { cells, fault };
}

/** Reads the values of a scanned block. */
export function readBody(text: string, bodyStart: number, scanned: ScannedBlock): Body {
  if (scanned.conflict) {
    const start = text.search(/^(?:<{7}|>{7}|\|{7}|={7})/m);
    const fault = { code: 'conflict-markers', details: {}, start, end: start + 7 } as const;
    return brokenBody(text, scanned.entries, fault);
  }
  const found = scanFinding(text, scanned);
  if (found !== undefined) return brokenBody(text, scanned.entries, found);
  const body = text.slice(bodyStart);
  const values = tomlValues(body.startsWith('\uFEFF') ? body.slice(1) : body);
  const refused = (reason: string): Body =>
    brokenBody(text, scanned.entries, {
      code: 'toml-refused',
      details: { reason },
      start: 0,
      end: text.trimEnd().length,
    });
  if ('reason' in values) return refused(values.reason);
  const cells = new Map<string, SourceCell>();
  for (const entry of scanned.entries) {
    const value = valueAt(values.table, entry.words);
    if (value === undefined) return refused(`${entry.key} is not understood`);
    cells.set(entry.key, cellOf(value, text, entry));
  }
  return { cells };
}
