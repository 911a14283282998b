const fractions: ReadonlyMap<string, string> = new Map([
  ['½', '1/2'],
  ['¼', '1/4'],
  ['¾', '3/4'],
  ['⅓', '1/3'],
  ['⅔', '2/3'],
  ['⅕', '1/5'],
  ['⅖', '2/5'],
  ['⅗', '3/5'],
  ['⅘', '4/5'],
  ['⅙', '1/6'],
  ['⅚', '5/6'],
  ['⅛', '1/8'],
  ['⅜', '3/8'],
  ['⅝', '5/8'],
  ['⅞', '7/8'],
]);

/**
 * The plain spelling of a pasted value: ordinary spaces, minus and marks; `½` as `1/2`, `²` as `2`,
 * `°F` as `degF`. Nothing about its meaning changes.
 */
export function tidied(text: string): string {
  return text
    .replace(/[\u00a0\u2000-\u200a\u202f\u3000\t]/g, ' ')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/\u2044/g, '/')
    .replace(/[\u2032\u2018\u2019]/g, "'")
    .replace(/[\u2033\u201c\u201d]|''/g, '"')
    .replace(/(\d?)\s*([½¼¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞])/g, (_, digit: string, sign: string) =>
      [digit, fractions.get(sign) ?? sign].filter((part) => part !== '').join(' '),
    )
    .replace(/²/g, '2')
    .replace(/³/g, '3')
    .replace(/° ?([FC])(?![A-Za-z])/g, ' deg$1')
    .replace(/°/g, ' deg')
    .replace(/ +/g, ' ')
    .trim();
}
