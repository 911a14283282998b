import { signedText } from './signed-text.ts';

/** A share as a percentage with no more decimals than told, and none for nothing: `2.5 %`. */
export function percentText(share: number, decimals = 1): string {
  const step = 10 ** decimals;
  return `${String(Math.round(share * 100 * step) / step)} %`;
}

/** How much more or less something is, as a percentage with its sign: `+12 %`, `−2.5 %`, `0 %`. */
export function percentChangeText(share: number, decimals = 1): string {
  const size = percentText(Math.abs(share), decimals);
  return size === '0 %' ? size : signedText(share, size);
}
