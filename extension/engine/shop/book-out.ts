import type { BookRow } from '../book/book.ts';
import { amountText, sizeText } from '../estimate/amount.ts';
import type { BillLine } from '../estimate/bill.ts';
import { moneyText } from '../estimate/money.ts';
import { takeId } from '../job/fresh-id.ts';
import type { Edit, FileReading } from '../job/source.ts';
import type { Snapshot } from '../session/snapshot.ts';
import { length as lengthDimension } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import { showQuantity } from '../units/show.ts';
import { largestFree } from './free-rectangle.ts';

/** One thing that a job which is built does to the shelf. */
export interface BookOutLine {
  readonly kind: 'taken' | 'offcut' | 'rest';
  readonly material: string;
  /** In a sentence, for a person to agree to. */
  readonly words: string;
  readonly edits: readonly Edit[];
}

/** Smallest side of an offcut that is kept where the book does not say (`offcut_least`); common practice, no source. */
const usualLeast = 152.4;

/** Share of what was bought that is worth keeping as a rest; common practice, no source. */
const restShare = 0.1;

interface Ground {
  readonly snapshot: Snapshot;
  readonly book: FileReading;
  readonly least: number;
  readonly settings: UnitSettings;
  readonly taken: Set<string>;
}

function leastOf({ book, settings }: Snapshot): number {
  const text = book.constants.get('offcut_least')?.cells.get('value') ?? '';
  const read = readQuantity(text, { settings, wanted: lengthDimension });
  return read.ok ? read.value.value.base : usualLeast;
}

/** A size that can be cut from the piece for certain: down to an eighth of an inch, or a millimetre. */
function roundedDown(mm: number, { units }: UnitSettings): number {
  const step = units === 'mm' ? 1 : 25.4 / 8;
  return Math.floor(mm / step + 1e-6) * step;
}

function lengthCell(mm: number, settings: UnitSettings): string {
  return showQuantity({ base: mm, dimension: lengthDimension }, settings).text.replace(/^≈ /, '');
}

function areaCell(mm2: number, { units }: UnitSettings): string {
  return units === 'mm' ? `${(mm2 / 100).toFixed(1)} cm2` : `${(mm2 / 645.16).toFixed(2)} sqin`;
}

function newPack(
  material: string,
  word: 'off' | 'rest',
  cells: Readonly<Record<string, string>>,
  ground: Ground,
): Edit {
  const id = takeId(`${material}_${word}`, ground.taken);
  return { kind: 'insert-row', table: 'pack', id, cells: { material, ...cells } };
}

/** Packs that the job took from the shelf: one less of each; an offcut that is gone goes from the book. */
function takenLines(line: BillLine, ground: Ground): readonly BookOutLine[] {
  const packs = new Map(ground.snapshot.book.packs.map((pack) => [pack.id, pack]));
  return line.packs.flatMap((pack): readonly BookOutLine[] => {
    const row = packs.get(pack.id);
    if (pack.shelf !== true || row === undefined) return [];
    const have = Number(row.cells.get('have'));
    const left = Math.max(0, Math.floor(have) - pack.count);
    const of = { table: 'pack', id: pack.id };
    const edit: Edit =
      left === 0 && isOffcut(row)
        ? { kind: 'delete-row', row: of }
        : { kind: 'set-cell', row: of, column: 'have', text: String(left) };
    const words = `${line.name}: ${String(pack.count)} of ${pack.id} used, ${String(left)} left on the shelf`;
    return [{ kind: 'taken', material: line.id, words, edits: [edit] }];
  });
}

/** A piece of a size of its own, or without a price: nothing that is bought again. */
function isOffcut({ cells }: BookRow): boolean {
  return cells.has('length') || cells.has('width') || !cells.has('price');
}

function offcutLine(
  line: BillLine,
  piece: { readonly length: number; readonly width: number },
  ground: Ground,
): readonly BookOutLine[] {
  const { settings, least } = ground;
  const size = {
    length: roundedDown(piece.length, settings),
    width: roundedDown(piece.width, settings),
  };
  if (Math.min(size.length, size.width) < least) return [];
  const cells = {
    holds: areaCell(size.length * size.width, settings),
    length: lengthCell(size.length, settings),
    width: lengthCell(size.width, settings),
    have: '1',
    name: `Offcut of ${line.name}`,
  };
  const words = `${line.name}: offcut of ${sizeText(size, settings)} to the shelf`;
  const edit = newPack(line.id, 'off', cells, ground);
  return [{ kind: 'offcut', material: line.id, words, edits: [edit] }];
}

/** The largest piece that is left of each sheet that was opened. */
function sheetOffcuts(line: BillLine, ground: Ground): readonly BookOutLine[] {
  const { laid } = line;
  if (laid === undefined || laid.order.instance.kind === 'packs') return [];
  const { stocks, kerf = 0 } = laid.order.instance;
  return laid.answer.sheets.flatMap((sheet, index) => {
    const stock = stocks.find(({ id }) => id === sheet.stock);
    if (stock === undefined || stock.width === 0) return [];
    const parts = laid.answer.placements.filter((placement) => placement.index === index);
    const free = largestFree(stock, parts, kerf);
    return free === undefined ? [] : offcutLine(line, free, ground);
  });
}

/** Ends of lengths that are long enough to keep. */
function stripEnds(line: BillLine, ground: Ground): readonly BookOutLine[] {
  const { settings, least } = ground;
  return (line.laid?.answer.patterns ?? []).flatMap(({ times, left }): readonly BookOutLine[] => {
    const end = roundedDown(left, settings);
    if (end < least) return [];
    const length = lengthCell(end, settings);
    const name = `End of ${line.name}`;
    const cells = { holds: length, length, have: String(times), name };
    const words = `${line.name}: ${String(times)} of ${length} to the shelf`;
    const edit = newPack(line.id, 'off', cells, ground);
    return [{ kind: 'offcut', material: line.id, words, edits: [edit] }];
  });
}

/** What is left in cans, boxes and on the roll. A rest that was charged has no price of its own. */
function restLines(line: BillLine, ground: Ground): readonly BookOutLine[] {
  const { left, need } = line;
  const isCut = line.laid !== undefined && line.laid.answer.kind !== 'bolt';
  if (isCut || left === undefined || need === undefined) return [];
  if (left.base <= restShare * (left.base + need.base)) return [];
  if (left.count && left.base < 1) return [];
  const { settings, snapshot } = ground;
  const holds = left.count
    ? String(Math.floor(left.base))
    : amountText(left, settings).replace(/^≈ /, '');
  const value = line.charges === 'used' ? line.leftValue : 0;
  const price = value > 0 ? { price: moneyText(value, snapshot.bill.currency) } : {};
  const cells = { holds, ...price, have: '1', name: `Rest of ${line.name}` };
  const words = `${line.name}: rest of ${holds} to the shelf`;
  const edit = newPack(line.id, 'rest', cells, ground);
  return [{ kind: 'rest', material: line.id, words, edits: [edit] }];
}

function linesOf(line: BillLine, ground: Ground): readonly BookOutLine[] {
  if (line.source.table !== 'material' || !line.complete) return [];
  const kind = line.laid?.answer.kind;
  const cut =
    kind === 'rectangles' || kind === 'outlines'
      ? sheetOffcuts(line, ground)
      : kind === 'strips'
        ? stripEnds(line, ground)
        : [];
  return [...takenLines(line, ground), ...cut, ...restLines(line, ground)];
}

/**
 * What a job that is built does to the shelf of the shop book it stands on: packs that it took from
 * there, offcuts worth keeping of what it cut, and rests of what it opened.
 */
export function bookOut(snapshot: Snapshot, book: FileReading): readonly BookOutLine[] {
  const { settings, bill } = snapshot;
  const ids = snapshot.book.packs.map(({ id }) => id);
  const ground = { snapshot, book, settings, least: leastOf(snapshot), taken: new Set(ids) };
  return bill.lines.flatMap((line) => linesOf(line, ground));
}
