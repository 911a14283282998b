import { crc32 } from './crc32.ts';

/** Distance between the rows of a file that was never sorted. */
const step = 1000;

/** A row's number as it is, in the sequence that is wanted; undefined: it gets a new one. */
export interface Numbered {
  readonly id: string;
  readonly order: number | undefined;
}

/** One number for a row between two others; a whole one where there is room, else halfway. */
function between(id: string, low: number, high: number): number {
  const from = Math.floor(low);
  const room = Math.ceil(high) - from - 1;
  if (room >= 1 && Number.isSafeInteger(from) && Number.isSafeInteger(room)) {
    return from + 1 + (crc32(id) % room);
  }
  return low / 2 + high / 2;
}

function spread(count: number, low: number, high: number): number[] {
  const whole = high - low - 1 >= count;
  return Array.from({ length: count }, (_, index) => {
    const number = low + ((high - low) * (index + 1)) / (count + 1);
    return whole ? Math.floor(number) : number;
  });
}

function rising(numbers: readonly number[], low: number, high: number): boolean {
  const all = [low, ...numbers, high];
  return all.every((number, index) => index === 0 || number > (all[index - 1] ?? -Infinity));
}

/** Numbers for a run of rows; undefined where no numbers fit between its neighbours. */
function runNumbers(
  ids: readonly string[],
  low: number | undefined,
  high: number | undefined,
): readonly number[] | undefined {
  const [only] = ids;
  if (high === undefined) {
    const from = low === undefined ? 0 : Math.floor(low / step) * step;
    return ids.map((_, index) => from + step * (index + 1));
  }
  const floor = low ?? (high > 1 ? 0 : high - step * ids.length);
  const numbers =
    ids.length === 1 && only !== undefined
      ? [between(only, floor, high)]
      : spread(ids.length, floor, high);
  return rising(numbers, floor, high) ? numbers : undefined;
}

/**
 * New numbers for the rows of a sequence that have none, so that all rise. Where two rows leave no
 * room between them, the one behind gets a new number too.
 *
 * @returns the numbers of the whole sequence
 */
export function orderNumbers(sequence: readonly Numbered[]): readonly number[] {
  const orders = sequence.map((row) => row.order);
  let at = 0;
  while (at < orders.length) {
    if (orders[at] !== undefined) {
      at++;
      continue;
    }
    let end = at;
    while (end < orders.length && orders[end] === undefined) end++;
    const ids = sequence.slice(at, end).map((row) => row.id);
    const numbers = runNumbers(ids, at === 0 ? undefined : orders[at - 1], orders[end]);
    if (numbers === undefined) orders[end] = undefined;
    else {
      for (const [index, number] of numbers.entries()) orders[at + index] = number;
      at = end;
    }
  }
  return orders.map((order) => order ?? 0);
}

function stands(a: Numbered, b: Numbered): boolean {
  if (a.order === undefined || b.order === undefined) return false;
  return a.order < b.order || (a.order === b.order && a.id < b.id);
}

/**
 * The same sequence in which only the longest run of rows that rise already keeps its numbers; the
 * others are to get new ones.
 */
export function keepLongestRun(sequence: readonly Numbered[]): readonly Numbered[] {
  // Patience sorting: tails[n] is the last row of the best run of n + 1 rows found so far.
  const tails: number[] = [];
  const previous: (number | undefined)[] = [];
  for (const [index, row] of sequence.entries()) {
    previous.push(undefined);
    if (row.order === undefined) continue;
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      const tail = sequence[tails[middle] ?? 0];
      if (tail !== undefined && stands(tail, row)) low = middle + 1;
      else high = middle;
    }
    previous[index] = low === 0 ? undefined : tails[low - 1];
    tails[low] = index;
  }
  const kept = new Set<number>();
  for (let at = tails.at(-1); at !== undefined; at = previous[at]) kept.add(at);
  return sequence.map((row, index) => (kept.has(index) ? row : { ...row, order: undefined }));
}
