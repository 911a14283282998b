import type { Book, BookRow } from '../book/book.ts';
import { minorPerUnit } from '../estimate/money.ts';
import type { Edit, FileReading } from '../job/source.ts';
import { money, sameDimension } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { ListLine, PriceList } from './price-list.ts';

/** A line of a price list held against the packs of a book. */
export interface PriceMatch {
  readonly line: number;
  /** What the list calls it. */
  readonly text: string;
  /** Pack it is taken for; undefined where none is like it. */
  readonly pack: string | undefined;
  readonly material: string;
  readonly how: 'id' | 'name' | 'likely' | 'none';
  readonly column: 'price' | 'rate';
  readonly old: string;
  /** New price as the book writes it; empty where it cannot be read. */
  readonly now: string;
  /** New less old, as a share of the old; undefined where either is no money. */
  readonly change: number | undefined;
  /** Why the price cannot be taken; empty where it can. */
  readonly fault: string;
}

function words(text: string): ReadonlySet<string> {
  return new Set(text.toLowerCase().match(/[a-z]+|\d+(?:\/\d+)?/g) ?? []);
}

/** Words that two names share, as a share of all their words. */
function likeness(one: ReadonlySet<string>, two: ReadonlySet<string>): number {
  const shared = [...one].filter((word) => two.has(word)).length;
  const all = new Set([...one, ...two]).size;
  return all === 0 ? 0 : shared / all;
}

/** Under this share of common words two names are not taken for the same goods. */
const likelyShare = 0.6;

interface Candidate {
  readonly pack: BookRow;
  readonly material: string;
  readonly names: readonly string[];
}

function candidates({ packs, materials }: Book): readonly Candidate[] {
  return packs.map((pack) => {
    const id = pack.cells.get('material') ?? '';
    const material = materials.get(id)?.cells.get('name') ?? id;
    const holds = pack.cells.get('holds') ?? pack.cells.get('step') ?? '';
    const own = pack.cells.get('name');
    const plain = `${material} ${holds}`;
    return { pack, material, names: own === undefined ? [plain] : [own, `${own} ${holds}`, plain] };
  });
}

interface Found {
  readonly candidate: Candidate | undefined;
  readonly how: PriceMatch['how'];
}

function same(one: string, two: string): boolean {
  const simple = (text: string): string => [...words(text)].sort().join(' ');
  return simple(one) === simple(two);
}

function found(id: string, name: string, all: readonly Candidate[]): Found {
  const known = all.find(({ pack }) => pack.id === id || pack.id === name);
  if (known !== undefined) return { candidate: known, how: 'id' };
  const named = all.filter(({ names }) => names.some((one) => same(one, name)));
  if (named.length === 1) return { candidate: named[0], how: 'name' };
  const ofMaterial = all.filter(({ material }) => same(material, name));
  if (ofMaterial.length === 1) return { candidate: ofMaterial[0], how: 'name' };
  return likely(name, all);
}

/** The one that is most like it; none where two are as like. */
function likely(name: string, all: readonly Candidate[]): Found {
  const own = words(name);
  const scored = all
    .map((candidate) => ({
      candidate,
      score: Math.max(...candidate.names.map((one) => likeness(own, words(one)))),
    }))
    .sort((a, b) => b.score - a.score);
  const [best, next] = scored;
  if (best === undefined || best.score < likelyShare || best.score === next?.score) {
    return { candidate: undefined, how: 'none' };
  }
  return { candidate: best.candidate, how: 'likely' };
}

interface NewPrice {
  readonly text: string;
  readonly fault: string;
}

/** The price in the book’s own form: a rate keeps what it is a rate of. */
function priced(text: string, old: string, settings: UnitSettings): NewPrice {
  const bare = text.replace(/^[$€£]\s?/, '');
  const per = /\/\s*(\w+)$/.exec(old)?.[1];
  const figure = /^(\d+(?:\.\d+)?)(?:\s*([A-Z]{3}))?(?:\s*\/\s*(\w+))?$/.exec(bare);
  if (figure === null) {
    return { text: '', fault: `“${text}” is no price; write it such as 18.50.` };
  }
  const [, number = '', code = settings.currency, unit = per] = figure;
  if (code !== settings.currency) {
    return { text: '', fault: `${text} is in ${code}, but the book is in ${settings.currency}.` };
  }
  if (unit !== per) {
    const wanted = per === undefined ? 'a pack' : `a ${per}`;
    return {
      text: '',
      fault: `${text} is for a ${unit ?? ''}, but the book has its price for ${wanted}.`,
    };
  }
  return { text: `${number} ${code}${per === undefined ? '' : `/${per}`}`, fault: '' };
}

function amountOf(text: string, settings: UnitSettings): number | undefined {
  const read = readQuantity(text.replace(/\/\s*\w+$/, ''), { settings, wanted: money });
  if (!read.ok || !sameDimension(read.value.value.dimension, money)) return undefined;
  return read.value.value.base * minorPerUnit(settings.currency);
}

function shareOfChange(old: string, now: string, settings: UnitSettings): number | undefined {
  const [was, is] = [amountOf(old, settings), amountOf(now, settings)];
  return was === undefined || is === undefined || was === 0 ? undefined : is / was - 1;
}

/** What a line says of its goods: number, and name with what it holds. */
function goodsOf(
  { cells }: ListLine,
  { columns }: PriceList,
): { readonly id: string; readonly text: string; readonly price: string } {
  const at = (place: number | undefined): string =>
    place === undefined ? '' : (cells[place] ?? '');
  const id = at(columns.id);
  const name = [at(columns.name), at(columns.holds)].filter((one) => one !== '').join(' ');
  return { id, text: name === '' ? id : name, price: at(columns.price) };
}

const unlike: PriceMatch = {
  line: 0,
  text: '',
  pack: undefined,
  material: '',
  how: 'none',
  column: 'price',
  old: '',
  now: '',
  change: undefined,
  fault: 'No pack of the book is like it.',
};

function matchOf(
  line: ListLine,
  list: PriceList,
  { all, settings }: { readonly all: readonly Candidate[]; readonly settings: UnitSettings },
): PriceMatch {
  const { id, text, price } = goodsOf(line, list);
  const { candidate, how } = found(id, text, all);
  if (candidate === undefined) {
    return { ...unlike, line: line.line, text, now: priced(price, '', settings).text };
  }
  const { pack, material } = candidate;
  const column = pack.cells.has('rate') ? 'rate' : 'price';
  const old = pack.cells.get(column) ?? '';
  const { text: now, fault } = priced(price, old, settings);
  const change = shareOfChange(old, now, settings);
  return { line: line.line, text, pack: pack.id, material, how, column, old, now, change, fault };
}

/** Holds the lines of a price list against the packs of a book, one by one. */
export function matchPrices(
  list: PriceList,
  book: Book,
  settings: UnitSettings,
): readonly PriceMatch[] {
  const ground = { all: candidates(book), settings };
  return list.lines.map((line) => matchOf(line, list, ground));
}

/** True for a match whose price is another one and can be written. */
export function isNews({ pack, fault, old, now }: PriceMatch): boolean {
  return pack !== undefined && fault === '' && now !== old;
}

/** The edits that write the prices that were agreed to into the book, and the day of them. */
export function priceEdits(
  book: FileReading,
  agreed: readonly PriceMatch[],
  day: string | undefined,
): readonly Edit[] {
  const own = new Set((book.tables.get('pack') ?? []).map(({ id }) => id));
  // Of two lines for one pack the last one counts.
  const byPack = new Map(agreed.map((match) => [match.pack ?? '', match]));
  const prices = [...byPack].flatMap(([pack, match]): readonly Edit[] => {
    const { column, now } = match;
    if (!own.has(pack)) return [];
    return [{ kind: 'set-cell', row: { table: 'pack', id: pack }, column, text: now }];
  });
  if (prices.length === 0 || day === undefined) return prices;
  return [...prices, { kind: 'set-head', key: 'date', text: day }];
}
