import { columnOf, tablePlace } from './columns.ts';
import type { FileProblemCode } from './file-problems.ts';
import { isReservedId, isWellFormedId } from './reserved-words.ts';
import { scanBlock, scanHeader, type Entry, type ScannedBlock } from './scan-block.ts';
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

/** What a block says by itself, whatever stands around it: this is kept as long as its text is. */
export interface ParsedBlock {
  readonly text: string;
  readonly header?: { readonly name: string; readonly array: boolean };
  /** `row` of a known table, `head`, the text above the first header, or something unknown. */
  readonly role: 'row' | 'head' | 'top' | 'other';
  readonly headerEnd: number;
  readonly entries: readonly Entry[];
  readonly cells: ReadonlyMap<string, SourceCell>;
  readonly id: string;
  readonly order?: number;
  readonly broken: boolean;
  readonly conflict: boolean;
  readonly open: boolean;
  readonly findings: readonly Finding[];
  /** Keys that are no core column of the table. */
  readonly unknown: readonly string[];
  /** Keys of cells that hold a bare number where the core column wants a unit. */
  readonly bare: readonly string[];
}

const scalar =
  /^(?:true|false|[+-]?(?:inf|nan|[\d_]+(?:\.[\d_]+)?(?:[eE][+-]?[\d_]+)?|0[xob][\da-fA-F_]+)|\d{4}-\d\d-\d\d(?:[Tt ].*)?|\d\d:\d\d.*)$/;

function shortened(text: string): string {
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

interface Body {
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

function readBody(text: string, bodyStart: number, scanned: ScannedBlock): Body {
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

function idFinding(table: string, id: SourceCell | undefined): Finding | undefined {
  if (id === undefined || id.text === '') {
    return { code: 'row-id-missing', details: { table }, start: 0, end: 0 };
  }
  const { text, span } = id;
  const place = { ...span, column: 'id' };
  if (!isWellFormedId(text)) {
    const better = text
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '_')
      .replace(/^[^a-z]+|_+$/g, '');
    const details = { id: text, better: better === '' ? 'mid_ring' : better };
    return { code: 'row-id-ill-formed', details, ...place };
  }
  if (isReservedId(table, text))
    return { code: 'row-id-reserved', details: { id: text }, ...place };
  return undefined;
}

function orderOf(cell: SourceCell | undefined): number | undefined {
  if (cell === undefined || !/^(?:integer|float)$/.test(cell.form)) return undefined;
  const order = Number(cell.text.replaceAll('_', ''));
  return Number.isFinite(order) ? order : undefined;
}

const bareNumber = /^[+-]?\d[\d./ ]*$/;

function wantsUnit(table: string, key: string): boolean {
  const type = columnOf(table, key)?.type;
  if (type?.kind !== 'quantity' || type.dimension === 'any') return false;
  const { length, mass, time, temperature, money, tag } = type.dimension;
  return tag !== undefined || [length, mass, time, temperature, money].some((one) => one !== 0);
}

/** True for a text that is a number without a unit; zero needs none. */
export function isBareNumber(text: string): boolean {
  return bareNumber.test(text) && !/^[+-]?[0.]+$/.test(text);
}

function roleOf(name: string, array: boolean, whole: boolean): ParsedBlock['role'] {
  if (whole && (name === 'job' || name === 'book')) return 'head';
  if (tablePlace(name) === undefined) return 'other';
  return array || !whole ? 'row' : 'other';
}

const lockedRowKeys = new Set(['name', 'kind']);

function rowBlock(text: string, at: number, header: { name: string; array: boolean }): ParsedBlock {
  const scanned = scanBlock(text, at);
  const { cells, fault } = readBody(text, at, scanned);
  const table = header.name;
  const findings: Finding[] = fault === undefined ? [] : [fault];
  const id = cells.get('id');
  const order = cells.get('order');
  const orderNumber = orderOf(order);
  const badId = fault === undefined ? idFinding(table, id) : undefined;
  if (badId !== undefined) findings.push(badId);
  if (order !== undefined && orderNumber === undefined && fault === undefined) {
    const details = { text: order.text };
    findings.push({ code: 'order-not-number', details, ...order.span, column: 'order' });
  }
  cells.delete('id');
  cells.delete('order');
  const keys = [...cells.keys()];
  if (fault !== undefined) {
    for (const key of keys) if (!lockedRowKeys.has(key)) cells.delete(key);
  }
  return {
    text,
    header,
    role: 'row',
    headerEnd: at,
    entries: scanned.entries,
    cells,
    id: id?.text ?? '',
    ...(orderNumber === undefined ? {} : { order: orderNumber }),
    broken: fault !== undefined,
    conflict: scanned.conflict,
    open: scanned.open,
    findings,
    unknown: fault === undefined ? keys.filter((key) => columnOf(table, key) === undefined) : [],
    bare:
      fault === undefined
        ? keys.filter((key) => isBareNumber(cells.get(key)?.text ?? '') && wantsUnit(table, key))
        : [],
  };
}

function plainBlock(
  text: string,
  at: number,
  role: 'head' | 'top' | 'other',
  header: { name: string; array: boolean } | undefined,
): ParsedBlock {
  const scanned = scanBlock(text, at);
  const { cells, fault } = readBody(text, at, scanned);
  const known = header?.name ?? '';
  const fits = (key: string): boolean => role !== 'head' || columnOf(known, key) !== undefined;
  const keys = [...cells.keys()];
  return {
    text,
    ...(header === undefined ? {} : { header }),
    role,
    headerEnd: at,
    entries: scanned.entries,
    cells,
    id: '',
    broken: fault !== undefined,
    conflict: scanned.conflict,
    open: scanned.open,
    findings: fault === undefined ? [] : [fault],
    unknown:
      role === 'top' ? keys.filter((key) => key !== 'format') : keys.filter((key) => !fits(key)),
    bare:
      role === 'head'
        ? keys.filter((key) => isBareNumber(cells.get(key)?.text ?? '') && wantsUnit(known, key))
        : [],
  };
}

function withFinding(block: ParsedBlock, finding: Finding, broken: boolean): ParsedBlock {
  return {
    ...block,
    broken: block.broken || broken,
    findings: [finding, ...(broken ? [] : block.findings)],
  };
}

/** Reads one block: all of its text, from its header's line (or the top of the file) to its end. */
export function parseBlock(text: string, hasHeader: boolean): ParsedBlock {
  if (!hasHeader) return plainBlock(text, 0, 'top', undefined);
  const { name, array, whole, end } = scanHeader(text, 0);
  const header = { name, array };
  const place = { start: 0, end: text.slice(0, end).trimEnd().length };
  const role = roleOf(name, array, whole);
  if (role === 'row') {
    const row = rowBlock(text, end, header);
    if (whole) return row;
    const details = { text: shortened(text.slice(0, end)) };
    return withFinding(row, { code: 'header-unreadable', details, ...place }, true);
  }
  const block = plainBlock(text, end, role, header);
  if (role === 'head') {
    if (!array) return block;
    return withFinding(block, { code: 'head-brackets', details: { table: name }, ...place }, false);
  }
  if (!whole) {
    const details = { text: shortened(text.slice(0, end)) };
    return withFinding(block, { code: 'header-unreadable', details, ...place }, true);
  }
  if (tablePlace(name) === undefined) return block;
  const row = rowBlock(text, end, { name, array: true });
  return withFinding(
    { ...row, header },
    { code: 'table-brackets', details: { table: name }, ...place },
    true,
  );
}
