import type { CutAnswer, CutPattern, StripsInstance } from '../instance.ts';

interface Cutting {
  readonly length: number;
  readonly kerf: number;
  readonly lap: number;
  readonly least: number;
}

interface CutStrip {
  readonly pieces: { part: string; length: number; count: number }[];
  left: number;
}

/**
 * Parts cut end to end from strips of one stock: what does not fit on a strip is begun on it and goes
 * on with the next, overlapping by the lap, where neither piece is shorter than the least.
 *
 * @returns undefined where strips are of several stocks, limited, or too short to join
 */
export function joinedStrips(
  instance: StripsInstance,
  joints: { readonly lap: number; readonly least: number },
): CutAnswer | undefined {
  const { kerf = 0, trim = 0 } = instance;
  const [stock] = instance.stocks;
  if (stock === undefined || instance.stocks.length > 1 || stock.limit !== undefined)
    return undefined;
  const cutting = { length: stock.length - 2 * trim, kerf, ...joints };
  if (cutting.length < 2 * joints.least + joints.lap) return undefined;
  const strips: CutStrip[] = [];
  const parts = [...instance.parts].sort((a, b) => b.length - a.length);
  let used = 0;
  for (const part of parts) {
    for (let count = 0; count < part.count; count++) {
      used += part.length;
      cutOne(strips, part, cutting);
    }
  }
  const bound = Math.ceil(used / cutting.length - 1e-9);
  return {
    kind: 'strips',
    count: strips.length,
    price: strips.length * stock.price,
    bound,
    priceBound: bound * stock.price,
    proven: strips.length <= bound,
    utilisation: strips.length === 0 ? 0 : used / (strips.length * stock.length),
    sheets: [],
    placements: [],
    patterns: strips.map(({ pieces, left }): CutPattern => ({
      stock: stock.id,
      times: 1,
      pieces,
      left,
    })),
    cuts: [],
    unplaced: [],
  };
}

function cutOne(
  strips: CutStrip[],
  part: { readonly id: string; readonly length: number },
  cutting: Cutting,
): void {
  const { kerf, lap, least } = cutting;
  let rest = part.length;
  while (rest > 1e-9) {
    const fits = strips.find(({ left }) => left >= rest);
    const strip = fits ?? roomiest(strips, cutting) ?? opened(strips, cutting);
    const whole = strip.left >= rest;
    // The piece that follows must not be too short either.
    const piece = whole ? rest : Math.min(strip.left, rest + lap - least);
    strip.pieces.push({ part: part.id, length: piece, count: 1 });
    strip.left = Math.max(0, strip.left - piece - kerf);
    rest = whole ? 0 : rest - piece + lap;
  }
}

function roomiest(strips: readonly CutStrip[], { least, lap }: Cutting): CutStrip | undefined {
  const last = strips[strips.length - 1];
  return last !== undefined && last.left >= Math.max(least, lap * 2) ? last : undefined;
}

function opened(strips: CutStrip[], { length }: Cutting): CutStrip {
  const strip = { pieces: [], left: length };
  strips.push(strip);
  return strip;
}
