import type { CutAnswer, CutInstance, Placement } from '../../extension/engine/cutting/instance.ts';

/** Sizes are compared to a thousandth of a millimetre and a little. */
const near = 2e-3;

type Laid = Exclude<CutInstance, { kind: 'packs' }>;

/**
 * Faults of a layout of rectangles, found from the instance and the placements alone, with no code of
 * the program: sizes, turns, counts, edges, distances, limits and price.
 */
export function rectangleFaults(instance: Laid, answer: CutAnswer): readonly string[] {
  return [
    ...partFaults(instance, answer),
    ...edgeFaults(instance, answer),
    ...distanceFaults(instance, answer),
    ...stockFaults(instance, answer),
  ];
}

function partFaults(instance: Laid, { placements, unplaced }: CutAnswer): readonly string[] {
  return instance.parts.flatMap((part) => {
    const own = placements.filter((one) => one.part === part.id);
    const missing = unplaced.find((one) => one.part === part.id)?.count ?? 0;
    const faults = own.length + missing === part.count ? [] : [`${part.id}: ${own.length} laid`];
    for (const one of own) {
      const across = one.rotation % 180 !== 0;
      const [length, width] = across ? [part.width, part.length] : [part.length, part.width];
      if (Math.abs(one.length - length) > near || Math.abs(one.width - width) > near) {
        faults.push(`${part.id}: another size`);
      }
      if (part.rotations !== undefined && !part.rotations.includes(one.rotation)) {
        faults.push(`${part.id}: turned by ${one.rotation}`);
      }
    }
    return faults;
  });
}

function edgeFaults(instance: Laid, { placements, length }: CutAnswer): readonly string[] {
  const trim = instance.trim ?? 0;
  return placements.flatMap((one) => {
    const stock = instance.stocks.find(({ id }) => id === one.stock);
    if (stock === undefined) return [`${one.part}: no stock ${one.stock}`];
    const rolled = instance.kind === 'bolt';
    const end = rolled ? (length ?? 0) : stock.length - trim;
    const inside =
      one.x >= (rolled ? 0 : trim) - near &&
      one.y >= trim - near &&
      one.x + one.length <= end + near &&
      one.y + one.width <= stock.width - trim + near;
    return inside ? [] : [`${one.part}: over the edge`];
  });
}

function distanceFaults(instance: Laid, { placements }: CutAnswer): readonly string[] {
  const kerf = instance.kerf ?? 0;
  const clear = (a: Placement, b: Placement): boolean =>
    a.x + a.length + kerf <= b.x + near || a.y + a.width + kerf <= b.y + near;
  return placements.flatMap((a, index) =>
    placements
      .slice(index + 1)
      .filter((b) => a.index === b.index && !clear(a, b) && !clear(b, a))
      .map((b) => `${a.part} and ${b.part} on sheet ${a.index}`),
  );
}

function stockFaults(instance: Laid, answer: CutAnswer): readonly string[] {
  const faults: string[] = [];
  let price = 0;
  for (const stock of instance.stocks) {
    const opened = answer.sheets.filter((sheet) => sheet.stock === stock.id).length;
    if (opened > (stock.limit ?? Infinity)) faults.push(`${stock.id}: ${opened} opened`);
    price += opened * stock.price;
  }
  if (instance.kind !== 'bolt' && Math.abs(price - answer.price) > 1e-6)
    faults.push('another price');
  if (answer.price < answer.priceBound - 1e-6) faults.push('cheaper than the bound');
  return faults;
}

/** Faults of what is held in place: each held part lies once, on its stock, where and how it is held. */
export function heldFaults(
  { fixed = [] }: Extract<CutInstance, { kind: 'rectangles' | 'outlines' | 'bolt' }>,
  { placements, sheets }: CutAnswer,
): readonly string[] {
  const sheetsOf = new Map<number, number>();
  return fixed.flatMap((held) => {
    const found = placements.filter((one) => one.fixed === held.id);
    const [one] = found;
    if (one === undefined || found.length > 1) return [`${held.id}: laid ${found.length} times`];
    const { part, stock, rotation, x, y } = one;
    const lies = [part, stock, sheets[one.index]?.stock, rotation].join();
    const there =
      lies === [held.part, held.stock, held.stock, held.rotation].join() &&
      Math.abs(x - held.x) < near &&
      Math.abs(y - held.y) < near;
    const together = sheetsOf.get(held.index) ?? one.index;
    sheetsOf.set(held.index, together);
    const index = held.index < sheets.length ? held.index : together;
    return there && one.index === index && one.index === together ? [] : [`${held.id}: moved`];
  });
}

/** Whether the placements of one sheet come apart by straight cuts from edge to edge, again and again. */
export function comesApart(placements: readonly Placement[]): boolean {
  if (placements.length <= 1) return true;
  const cut = (start: (one: Placement) => number, size: (one: Placement) => number): boolean => {
    const sorted = [...placements].sort((a, b) => start(a) - start(b));
    let end = -Infinity;
    for (const [index, one] of sorted.entries()) {
      if (index > 0 && start(one) >= end - near) {
        return comesApart(sorted.slice(0, index)) && comesApart(sorted.slice(index));
      }
      end = Math.max(end, start(one) + size(one));
    }
    return false;
  };
  return (
    cut(
      ({ x }) => x,
      ({ length }) => length,
    ) ||
    cut(
      ({ y }) => y,
      ({ width }) => width,
    )
  );
}

/** Faults of strips: pieces, room with kerf, limits and price. */
export function stripFaults(instance: Laid, answer: CutAnswer): readonly string[] {
  const stockOf = (id: string) => instance.stocks.find((stock) => stock.id === id);
  const price = answer.patterns.reduce(
    (sum, { stock, times }) => sum + (stockOf(stock)?.price ?? 0) * times,
    0,
  );
  return [
    ...answer.patterns.flatMap(({ stock, pieces }) => {
      const number = pieces.reduce((sum, { count }) => sum + count, 0);
      const length = pieces.reduce((sum, piece) => sum + piece.length * piece.count, 0);
      const room = (stockOf(stock)?.length ?? 0) - 2 * (instance.trim ?? 0);
      const taken = length + (number - 1) * (instance.kerf ?? 0);
      return taken > room + near ? [`${stock}: ${length} mm`] : [];
    }),
    ...cutCountFaults(instance, answer),
    ...(Math.abs(price - answer.price) > 1e-6 ? ['another price'] : []),
    ...(answer.price < answer.priceBound - 1e-6 ? ['cheaper than the bound'] : []),
  ];
}

function cutCountFaults(instance: Laid, { patterns, unplaced }: CutAnswer): readonly string[] {
  const pieces = patterns.flatMap((pattern) =>
    pattern.pieces.map(({ part, count }) => ({ part, count: count * pattern.times })),
  );
  return instance.parts.flatMap(({ id, count }) => {
    const cut = [...pieces, ...unplaced]
      .filter(({ part }) => part === id)
      .reduce((sum, one) => sum + one.count, 0);
    return cut === count ? [] : [`${id}: ${cut} cut`];
  });
}
