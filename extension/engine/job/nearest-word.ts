function distance(a: string, b: string): number {
  let above = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let row = 1; row <= a.length; row++) {
    const line = [row];
    for (let at = 1; at <= b.length; at++) {
      const swap = (above[at - 1] ?? 0) + (a[row - 1] === b[at - 1] ? 0 : 1);
      line.push(Math.min(swap, (above[at] ?? 0) + 1, (line[at - 1] ?? 0) + 1));
    }
    above = line;
  }
  return above[b.length] ?? 0;
}

/** The word that a slip of the fingers may have meant; undefined where none is near. */
export function nearestWord(word: string, words: readonly string[]): string | undefined {
  if (word.length > 40) return undefined;
  const allowed = word.length <= 4 ? 1 : 2;
  let best: string | undefined;
  let least = allowed + 1;
  for (const candidate of words) {
    if (Math.abs(candidate.length - word.length) > allowed) continue;
    const far = distance(word, candidate);
    if (far < least) [best, least] = [candidate, far];
  }
  return best;
}
