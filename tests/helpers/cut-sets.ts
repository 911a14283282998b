import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { chanceFrom } from '../../extension/engine/cutting/chance.ts';
import type {
  BoltInstance,
  Part,
  RectanglesInstance,
  StripsInstance,
} from '../../extension/engine/cutting/instance.ts';

/** Folder of the ESICUP data sets (github.com/ESICUP/datasets, CC0); undefined where they are not there. */
export function cutSets(): string | undefined {
  const folder = process.env['CUT_SETS'];
  return folder !== undefined && existsSync(folder) ? folder : undefined;
}

const sides = [10, 30, 40, 100, 100, 300, 100, 100, 100, 100];
const longest = [10, 10, 35, 35, 100, 100];

/**
 * Instance `index` of a class: 1 to 6 after J. O. Berkey and P. Y. Wang (1987), 7 to 10 after S. Martello
 * and D. Vigo (1998), drawn by this program's own chance.
 */
export function classInstance(kind: number, pieces: number, index: number): RectanglesInstance {
  const chance = chanceFrom(kind * 100_003 + pieces * 101 + index);
  const between = (low: number, high: number): number =>
    low + Math.floor(chance() * (high - low + 1));
  const side = sides[kind - 1] ?? 100;
  const sized = (): readonly [number, number] => {
    const most = longest[kind - 1];
    if (most !== undefined) return [between(1, most), between(1, most)];
    const own = kind - 7;
    const others = [0, 1, 2, 3].filter((one) => one !== own);
    const type = chance() < 0.7 ? own : (others[between(0, 2)] ?? own);
    if (type === 0) return [between(67, 100), between(1, 50)];
    if (type === 1) return [between(1, 50), between(67, 100)];
    return type === 2 ? [between(50, 100), between(50, 100)] : [between(1, 50), between(1, 50)];
  };
  const parts = Array.from({ length: pieces }, (_, at): Part => {
    const [length, width] = sized();
    return { id: String(at), length, width, count: 1, rotations: [0] };
  });
  const stocks = [{ id: 'bin', length: side, width: side, price: 1 }];
  return { kind: 'rectangles', method: 'free', stocks, parts };
}

/** Falkenauer's uniform sets: `count name capacity items best`, then the sizes. */
export function uniformSets(
  file: string,
): readonly { readonly instance: StripsInstance; readonly best: number }[] {
  const words = readFileSync(file, 'utf8').split(/\s+/).filter(Boolean);
  let at = 1;
  return Array.from({ length: Number(words[0]) }, () => {
    const [, room, count, best] = words.slice(at, at + 4);
    const sizes = words.slice(at + 4, at + 4 + Number(count)).map(Number);
    at += 4 + Number(count);
    return { instance: stripsOf(Number(room), sizes), best: Number(best) };
  });
}

/** Schwerin and Wäscher's sets: kinds, capacity, then size and number in turn. */
export function countedSets(file: string): readonly StripsInstance[] {
  const blocks = readFileSync(file, 'utf8')
    .split(/'BPP[^']*'/)
    .slice(1);
  return blocks.map((block) => {
    const numbers = block.trim().split(/\s+/).map(Number);
    const [kinds = 0, room = 0] = numbers;
    const sizes = Array.from({ length: kinds }, (_, at) =>
      Array<number>(numbers[3 + 2 * at] ?? 0).fill(numbers[2 + 2 * at] ?? 0),
    );
    return stripsOf(room, sizes.flat());
  });
}

function stripsOf(room: number, sizes: readonly number[]): StripsInstance {
  const counts = new Map<number, number>();
  for (const size of sizes) counts.set(size, (counts.get(size) ?? 0) + 1);
  const parts = [...counts].map(([length, count]) => ({
    id: String(length),
    length,
    width: 0,
    count,
  }));
  return {
    kind: 'strips',
    stocks: [{ id: 'strip', length: room, width: 0, price: 1 }],
    parts,
  };
}

/**
 * Instance `index` of a class with five stocks to choose from, drawn as D. Pisinger and M. Sigurd's sets
 * are: the class's own sheet and four of half its sides or more. What they ask for one follows from
 * their files: 1.2 times its area less a fifth of the whole sheet's.
 */
export function pricedInstance(kind: number, pieces: number, index: number): RectanglesInstance {
  const chance = chanceFrom(kind * 7_919 + pieces * 31 + index);
  const whole = sides[kind - 1] ?? 100;
  const side = (): number => whole / 2 + Math.floor(chance() * (whole / 2 + 1));
  const others = Array.from({ length: 4 }, () => [side(), side()] as const);
  const stocks = [[whole, whole] as const, ...others].map(([length, width], at) => ({
    id: String(at),
    length,
    width,
    price: Math.floor(1.2 * length * width - 0.2 * whole * whole),
  }));
  return { ...classInstance(kind, pieces, index), stocks };
}

/** Priced stocks (Pisinger and Sigurd): `items stocks 1`, stocks `W H 1 cost`, items `id w h 1`. */
export function pricedSets(folder: string, kind: number): readonly RectanglesInstance[] {
  const names = readdirSync(folder).filter((name) => name.startsWith(`MB_Class_${kind}_`));
  return names.map((name) => {
    const lines = readFileSync(join(folder, name), 'utf8')
      .trim()
      .split('\n')
      .map((line) => line.trim().split(/\s+/).map(Number));
    const [, kinds = 0] = lines[0] ?? [];
    const stocks = lines.slice(1, 1 + kinds).map(([length = 0, width = 0, , price = 0], at) => ({
      id: String(at),
      length,
      width,
      price,
    }));
    const parts = lines.slice(1 + kinds).map(([id = 0, length = 0, width = 0]) => ({
      id: String(id),
      length,
      width,
      count: 1,
      rotations: [0],
    }));
    return { kind: 'rectangles', method: 'free', stocks, parts };
  });
}

type Corners = readonly (readonly [number, number])[];

function alongRoll(width: number, parts: readonly Part[]): BoltInstance {
  return { kind: 'bolt', stocks: [{ id: 'roll', length: width / 1000, width, price: 1 }], parts };
}

/** A set of pieces written as lists of vertices, on a roll of a width; half turns are allowed. */
export function vertexSet(file: string, width: number): BoltInstance {
  const pieces = readFileSync(file, 'utf8')
    .split(/PIECE\s+\d+/)
    .slice(1);
  const parts = pieces.map((text, at): Part => {
    const [, listed = ''] = text.split(/VERTICES \(X,Y\)/);
    const points: Corners = listed
      .trim()
      .split('\n')
      .map((line) => line.trim().split(/\s+/).map(Number))
      .filter((pair) => pair.length === 2)
      .map(([x = 0, y = 0]) => [x, y] as const);
    const count = Number(/QUANTITY\s+(\d+)/.exec(text)?.[1]);
    return { id: String(at), length: 1, width: 1, count, points, rotations: [0, 180] };
  });
  return alongRoll(width, parts);
}

/** A set written as XML with polygons of segments and a board. */
export function polygonSet(file: string): BoltInstance {
  const text = readFileSync(file, 'utf8');
  const loops = new Map<string, Corners>();
  for (const [, id = '', body = ''] of text.matchAll(
    /<polygon id="(\w+)"[^>]*>([\s\S]*?)<\/polygon>/g,
  )) {
    const starts = body.matchAll(/<segment n="\d+" x0="\s*([-\d.]+)"[^>]*? y0="\s*([-\d.]+)"/g);
    loops.set(
      id,
      [...starts].map(([, x, y]) => [Number(x), Number(y)] as const),
    );
  }
  const [, board = ''] = /<boards>[\s\S]*?idPolygon="(\w+)"/.exec(text) ?? [];
  const width = Math.max(...(loops.get(board) ?? []).map(([, y]) => y));
  const [, lot = ''] = /<lot>([\s\S]*?)<\/lot>/.exec(text) ?? [];
  const pieces = lot.matchAll(/<piece id="(\w+)" quantity="(\d+)">([\s\S]*?)<\/piece>/g);
  const parts = [...pieces].map(([, id = '', count, body = '']): Part => {
    const points = loops.get(/idPolygon="(\w+)"/.exec(body)?.[1] ?? '') ?? [];
    const rotations = [...body.matchAll(/angle="(\d+)"/g)].map(([, turn]) => Number(turn));
    return { id, length: 1, width: 1, count: Number(count), points, rotations };
  });
  return alongRoll(width, parts);
}
