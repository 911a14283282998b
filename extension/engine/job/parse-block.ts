import { columnOf, tablePlace } from './columns.ts';
import { readBody, shortened, type Finding } from './read-body.ts';
import { isReservedId, isWellFormedId } from './reserved-words.ts';
import { scanBlock, scanHeader, type Entry } from './scan-block.ts';
import type { SourceCell } from './source.ts';

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

/** What a locked row still shows. */
const lockedRowKeys = new Set(['name', 'kind']);

interface Header {
  readonly name: string;
  readonly array: boolean;
}

/** Keys of cells that hold a bare number where a core column wants a unit. */
function bareKeys(table: string, cells: ReadonlyMap<string, SourceCell>): readonly string[] {
  const found: string[] = [];
  cells.forEach((cell, key) => {
    if (isBareNumber(cell.text) && wantsUnit(table, key)) found.push(key);
  });
  return found;
}

/** Cells of a row besides its id and order; of a locked row, those it still shows. */
function shownCells(
  cells: ReadonlyMap<string, SourceCell>,
  locked: boolean,
): ReadonlyMap<string, SourceCell> {
  const shown = new Map<string, SourceCell>();
  cells.forEach((cell, key) => {
    if (locked ? lockedRowKeys.has(key) : key !== 'id' && key !== 'order') shown.set(key, cell);
  });
  return shown;
}

function rowFindings(table: string, cells: ReadonlyMap<string, SourceCell>): readonly Finding[] {
  const badId = idFinding(table, cells.get('id'));
  const order = cells.get('order');
  if (order === undefined || orderOf(order) !== undefined)
    return badId === undefined ? [] : [badId];
  const details = { text: order.text };
  const badOrder = { code: 'order-not-number', details, ...order.span, column: 'order' } as const;
  return badId === undefined ? [badOrder] : [badId, badOrder];
}

function rowBlock(text: string, at: number, header: Header, headerFault?: Finding): ParsedBlock {
  const scanned = scanBlock(text, at);
  const body = readBody(text, at, scanned);
  const fault = headerFault ?? body.fault;
  const order = orderOf(body.cells.get('order'));
  const whole = fault === undefined;
  const cells = shownCells(body.cells, !whole);
  const table = header.name;
  const block: ParsedBlock = {
    text,
    header,
    role: 'row',
    headerEnd: at,
    entries: scanned.entries,
    cells,
    id: body.cells.get('id')?.text ?? '',
    broken: !whole,
    conflict: scanned.conflict,
    open: scanned.open,
    findings: whole ? rowFindings(table, body.cells) : [fault],
    unknown: whole ? [...cells.keys()].filter((key) => columnOf(table, key) === undefined) : [],
    bare: whole ? bareKeys(table, cells) : [],
  };
  return order === undefined ? block : { ...block, order };
}

interface PlainBlock {
  readonly role: 'head' | 'top' | 'other';
  readonly header?: Header;
  readonly finding?: Finding;
  readonly broken?: boolean;
}

function unknownKeys({ role, header }: PlainBlock, keys: readonly string[]): readonly string[] {
  if (role === 'top') return keys.filter((key) => key !== 'format');
  if (role === 'other') return [];
  return keys.filter((key) => columnOf(header?.name ?? '', key) === undefined);
}

function plainBlock(text: string, at: number, plain: PlainBlock): ParsedBlock {
  const scanned = scanBlock(text, at);
  const { cells, fault } = readBody(text, at, scanned);
  const { role, header, finding, broken = false } = plain;
  const findings = broken ? [finding] : [finding, fault];
  return {
    text,
    ...(header === undefined ? {} : { header }),
    role,
    headerEnd: at,
    entries: scanned.entries,
    cells,
    id: '',
    broken: broken || fault !== undefined,
    conflict: scanned.conflict,
    open: scanned.open,
    findings: findings.filter((one) => one !== undefined),
    unknown: unknownKeys(plain, [...cells.keys()]),
    bare: role === 'head' ? bareKeys(header?.name ?? '', cells) : [],
  };
}

function headerFinding(text: string): Finding | undefined {
  const { name, array, whole, end } = scanHeader(text, 0);
  const place = { start: 0, end: text.slice(0, end).trimEnd().length };
  if (!whole) {
    return {
      code: 'header-unreadable',
      details: { text: shortened(text.slice(0, end)) },
      ...place,
    };
  }
  const details = { table: name };
  if (name === 'job' || name === 'book') {
    return array ? { code: 'head-brackets', details, ...place } : undefined;
  }
  const single = tablePlace(name) !== undefined && !array;
  return single ? { code: 'table-brackets', details, ...place } : undefined;
}

/** Reads one block: all of its text, from its header's line (or the top of the file) to its end. */
export function parseBlock(text: string, hasHeader: boolean): ParsedBlock {
  if (!hasHeader) return plainBlock(text, 0, { role: 'top' });
  const { name, array, whole, end } = scanHeader(text, 0);
  const header = { name, array };
  const finding = headerFinding(text);
  if (tablePlace(name) !== undefined) return rowBlock(text, end, header, finding);
  const isHead = whole && (name === 'job' || name === 'book');
  return plainBlock(text, end, {
    role: isHead ? 'head' : 'other',
    header,
    broken: !whole,
    ...(finding === undefined ? {} : { finding }),
  });
}
