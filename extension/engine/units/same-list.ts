/** True where two lists hold the same things in the same order. */
export function sameList(one: ArrayLike<unknown>, other: ArrayLike<unknown>): boolean {
  if (one === other) return true;
  if (one.length !== other.length) return false;
  for (let at = 0; at < one.length; at++) if (one[at] !== other[at]) return false;
  return true;
}
