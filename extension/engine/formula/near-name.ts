/** Number of letters to change, add or take away to make one word of the other. */
function distance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}

/** The word most like the one written, whatever its case; undefined where none is near. */
export function nearName(written: string, words: Iterable<string>): string | undefined {
  const lower = written.toLowerCase();
  let best: string | undefined;
  let least = Math.max(1, Math.floor(written.length / 3)) + 1;
  for (const word of words) {
    if (Math.abs(word.length - written.length) >= least) continue;
    const far = distance(lower, word.toLowerCase());
    if (far < least) {
      least = far;
      best = word;
    }
  }
  return best;
}

/** ` Did you mean length?`, or nothing. */
export function suggestion(written: string, words: Iterable<string>): string {
  const near = nearName(written, words);
  return near === undefined ? '' : ` Did you mean ${near}?`;
}
