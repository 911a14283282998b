/** A difference in words: the text of its size behind its sign, as in `+1 h 20 min` and `−12.50 USD`. */
export function signedText(change: number, size: string): string {
  return `${change < 0 ? '−' : '+'}${size}`;
}
