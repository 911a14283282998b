import type { ParsedBlock } from './parse-block.ts';
import type { Resplit, SplitText } from './split-blocks.ts';

/** What the blocks of a file are, taken together. */
export interface BlockCensus {
  /** Places of the blocks of `[job]` or `[book]`. */
  readonly heads: readonly number[];
  readonly conflicted: boolean;
  readonly broken: boolean;
  /** Some block can be read and has something to show. */
  readonly shown: boolean;
}

/** Looks at every block. */
export function takeCensus({ parsed }: SplitText): BlockCensus {
  const heads: number[] = [];
  let [conflicted, broken, shown] = [false, false, false];
  for (const [index, block] of parsed.entries()) {
    if (block.role === 'head') heads.push(index);
    conflicted ||= block.conflict;
    if (block.broken) broken = true;
    else shown ||= block.role === 'row' || block.role === 'head';
  }
  return { heads, conflicted, broken, shown };
}

function countsAs(old: ParsedBlock | undefined, block: ParsedBlock): boolean {
  return old?.role === block.role && old.broken === block.broken && old.conflict === block.conflict;
}

/** The census after a change of the text; the same one where no block became another thing. */
export function censusAfter(
  before: { readonly split: SplitText; readonly census: BlockCensus },
  { split, ahead, behind }: Resplit,
): BlockCensus {
  const { parsed } = before.split;
  const fresh = split.parsed.slice(ahead, split.parsed.length - behind);
  const stands =
    parsed.length === split.parsed.length &&
    fresh.every((block, index) => countsAs(parsed[ahead + index], block));
  return stands ? before.census : takeCensus(split);
}
