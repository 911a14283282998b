/** A share as a percentage with no more decimals than told, and none for nothing: `2.5 %`. */
export function percentText(share: number, decimals = 1): string {
  const step = 10 ** decimals;
  return `${String(Math.round(share * 100 * step) / step)} %`;
}
