// Long stretches are compared as whole strings, which is many times faster than letter by letter.
const stretch = 8192;

/** How many letters two texts have in common at their beginning. */
export function commonStart(a: string, b: string): number {
  const limit = Math.min(a.length, b.length);
  let at = 0;
  while (at + stretch <= limit && a.slice(at, at + stretch) === b.slice(at, at + stretch)) {
    at += stretch;
  }
  while (at < limit && a.charCodeAt(at) === b.charCodeAt(at)) at++;
  return at;
}

/** How many letters two texts have in common at their end, `most` at most. */
export function commonEnd(a: string, b: string, most: number): number {
  let count = 0;
  const ends = (length: number, text: string): string =>
    text.slice(text.length - count - length, text.length - count);
  while (count + stretch <= most && ends(stretch, a) === ends(stretch, b)) count += stretch;
  const letter = (text: string): number => text.charCodeAt(text.length - 1 - count);
  while (count < most && letter(a) === letter(b)) count++;
  return count;
}
