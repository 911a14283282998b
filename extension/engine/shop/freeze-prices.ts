import type { Edit, FileReading } from '../job/source.ts';
import type { Snapshot } from '../session/snapshot.ts';

/** A price to be held for a job, as it stands in the book now. */
export interface PriceToFreeze {
  readonly pack: string;
  readonly column: 'price' | 'rate';
  readonly text: string;
  /** Number of packs from which each costs less, and the price then. */
  readonly lower?: { readonly from: string; readonly price_from: string };
  /** What the job holds already; undefined where it holds nothing for this pack. */
  readonly held: string | undefined;
}

/** Prices of every pack of the materials on the bill, as the book has them: a quote stands on them. */
export function pricesToFreeze({ bill, book, shown }: Snapshot): readonly PriceToFreeze[] {
  const materials = new Set(
    bill.lines.flatMap(({ source }) => (source.table === 'material' ? [source.id] : [])),
  );
  const held = heldRows(shown);
  return book.packs.flatMap(({ id, cells }): readonly PriceToFreeze[] => {
    // What is on the shelf is not bought at a price that could rise.
    if (!materials.has(cells.get('material') ?? '') || cells.has('have')) return [];
    const column = cells.has('rate') ? 'rate' : 'price';
    const text = cells.get(column);
    if (text === undefined || text.startsWith('=')) return [];
    const [from, lowerPrice] = [cells.get('from'), cells.get('price_from')];
    const lower =
      from === undefined || lowerPrice === undefined || column === 'rate'
        ? {}
        : { lower: { from, price_from: lowerPrice } };
    return [{ pack: id, column, text, ...lower, held: held.get(id)?.get(column) }];
  });
}

type HeldCells = ReadonlyMap<string, string>;

function heldRows({ tables }: FileReading): ReadonlyMap<string, HeldCells> {
  const rows = (tables.get('price') ?? []).filter(({ broken }) => !broken);
  return new Map(
    rows.map(({ cells }) => [
      cells.get('pack')?.text ?? '',
      new Map([...cells].map(([key, cell]) => [key, cell.text])),
    ]),
  );
}

/** The edits that take every held price out of a job, so that it follows the book again. */
export function thawEdits({ tables }: FileReading): readonly Edit[] {
  return [...(tables.get('price') ?? [])]
    .sort((a, b) => b.occurrence - a.occurrence)
    .map((row) => ({ kind: 'delete-row', row }));
}

/**
 * The edits that hold today's prices for a job: a `[[price]]` row a pack, with the day. Rows that it
 * holds already are brought to today; rows of packs that it does not take any more go.
 */
export function freezeEdits(snapshot: Snapshot, day: string): readonly Edit[] {
  const prices = pricesToFreeze(snapshot);
  const rows = prices.map(({ pack, column, text, lower }): Edit => {
    const cells = { pack, [column]: text, ...lower, date: day };
    return { kind: 'insert-row', table: 'price', id: pack, cells };
  });
  return [...thawEdits(snapshot.shown), ...rows];
}

/** What held prices come to against those of the book. */
export interface PriceDrift {
  /** How many packs are held, and since which days, the first to the last. */
  readonly held: number;
  readonly since: readonly string[];
  /** Materials in the price as held and as of today, in minor units. */
  readonly frozen: number;
  readonly today: number;
}

/** How far a job's frozen prices are from the book's; undefined where it holds none. */
export function priceDrift(
  { shown, bill }: Snapshot,
  whatIf: (edits: readonly Edit[]) => { readonly bill: Snapshot['bill'] } | undefined,
): PriceDrift | undefined {
  const rows = shown.tables.get('price') ?? [];
  const then = rows.length === 0 ? undefined : whatIf(thawEdits(shown));
  if (then === undefined) return undefined;
  const days = rows.flatMap(({ cells }) => cells.get('date')?.text ?? []);
  return {
    held: rows.length,
    since: [...new Set(days)].sort(),
    frozen: bill.totals.charge,
    today: then.bill.totals.charge,
  };
}
