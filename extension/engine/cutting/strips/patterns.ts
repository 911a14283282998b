import { bestFill } from './fill.ts';
import type { Size, StripStock } from './sizes.ts';

/** A way to cut one strip, with its share in the least-price mixture of ways. */
export interface Pattern {
  readonly stock: StripStock;
  readonly counts: readonly number[];
}

export interface Mixture {
  readonly patterns: readonly { readonly pattern: Pattern; readonly times: number }[];
  /** No cutting costs less. */
  readonly bound: number;
}

/** The equations of the mixture: a square table of ways and the inverse of it. */
interface Basis {
  readonly columns: Pattern[];
  readonly inverse: number[][];
  times: number[];
}

const near = 1e-9;

/**
 * The mixture of ways to cut strips that costs least where parts of strips are allowed, and with it a
 * bound on every real cutting: column generation (P. C. Gilmore and R. E. Gomory, "A linear
 * programming approach to the cutting-stock problem", 1961), bound after Farley (1990).
 *
 * Limits of stocks are left out: they can only make cutting dearer.
 */
export function leastMixture(
  sizes: readonly Size[],
  stocks: readonly StripStock[],
  steps: number,
): Mixture {
  const start = sizes.map((size) => singlePattern(size, sizes, stocks));
  if (start.some((pattern) => pattern === undefined)) return { patterns: [], bound: 0 };
  const columns = start.filter((pattern) => pattern !== undefined);
  const basis: Basis = {
    columns,
    inverse: sizes.map((_, row) =>
      sizes.map((__, column) => (row === column ? 1 / (columns[row]?.counts[row] ?? 1) : 0)),
    ),
    times: sizes.map(({ count }, row) => count / (columns[row]?.counts[row] ?? 1)),
  };
  let bound = 0;
  for (let step = 0; step < steps; step++) {
    const duals = dualsOf(basis);
    const found = bestPattern(sizes, stocks, duals);
    const price = basis.columns.reduce(
      (sum, one, row) => sum + one.stock.price * (basis.times[row] ?? 0),
      0,
    );
    if (found.exact) bound = Math.max(bound, price / Math.max(1, found.ratio));
    if (found.pattern === undefined || found.ratio <= 1 + 1e-7) break;
    if (!entered(basis, found.pattern)) break;
  }
  const patterns = basis.columns.map((pattern, row) => ({ pattern, times: basis.times[row] ?? 0 }));
  return { patterns: patterns.filter(({ times }) => times > near), bound };
}

function singlePattern(
  size: Size,
  sizes: readonly Size[],
  stocks: readonly StripStock[],
): Pattern | undefined {
  let best: Pattern | undefined;
  let cost = Infinity;
  for (const stock of stocks) {
    const most = Math.min(size.count, Math.floor(stock.length / size.length));
    if (most > 0 && stock.price / most < cost) {
      cost = stock.price / most;
      const counts = sizes.map(({ index }) => (index === size.index ? most : 0));
      best = { stock, counts };
    }
  }
  return best;
}

function dualsOf({ columns, inverse }: Basis): readonly number[] {
  return inverse.map((_, column) => {
    let sum = 0;
    for (let row = 0; row < columns.length; row++) {
      sum += (columns[row]?.stock.price ?? 0) * (inverse[row]?.[column] ?? 0);
    }
    return sum;
  });
}

// A strip is worth most where the duals of its pieces most exceed its price.
function bestPattern(
  sizes: readonly Size[],
  stocks: readonly StripStock[],
  duals: readonly number[],
): { readonly pattern: Pattern | undefined; readonly ratio: number; readonly exact: boolean } {
  const rate = (size: Size): number => (duals[size.index] ?? 0) / size.length;
  const byWorth = [...sizes].sort((a, b) => rate(b) - rate(a));
  const pool = sizes.map(({ count }) => count);
  let best: { pattern: Pattern; ratio: number } | undefined;
  let exact = true;
  for (const stock of stocks) {
    const fill = bestFill(
      stock.length,
      { sizes: byWorth, pool, values: duals },
      { nodes: 200_000, enough: Infinity },
    );
    exact &&= fill.exact;
    const ratio = stock.price > 0 ? fill.value / stock.price : fill.value > near ? Infinity : 0;
    if (best === undefined || ratio > best.ratio) {
      best = { pattern: { stock, counts: fill.taken }, ratio };
    }
  }
  return { pattern: best?.pattern, ratio: best?.ratio ?? 0, exact };
}

/** Takes a way into the mixture in place of the one that it uses up first. */
function entered(basis: Basis, pattern: Pattern): boolean {
  const { inverse, columns, times } = basis;
  const share = inverse.map((row) =>
    row.reduce((sum, one, at) => sum + one * (pattern.counts[at] ?? 0), 0),
  );
  let leaving = -1;
  let least = Infinity;
  share.forEach((own, row) => {
    if (own <= near) return;
    const ratio = (times[row] ?? 0) / own;
    if (ratio < least - 1e-12) [leaving, least] = [row, ratio];
  });
  const pivotRow = inverse[leaving];
  const pivot = share[leaving];
  if (pivotRow === undefined || pivot === undefined) return false;
  const scaled = pivotRow.map((one) => one / pivot);
  inverse.forEach((row, at) => {
    const own = share[at] ?? 0;
    inverse[at] =
      at === leaving ? scaled : row.map((one, column) => one - own * (scaled[column] ?? 0));
  });
  basis.times = times.map((one, at) =>
    at === leaving ? least : Math.max(0, one - (share[at] ?? 0) * least),
  );
  columns[leaving] = pattern;
  return true;
}
