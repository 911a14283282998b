/** How far a value reaches in the text. */
export interface ScannedValue {
  readonly end: number;
  /** What is wrong with it, where it does not end as it should. */
  readonly fault?: 'text-not-closed' | 'list-not-closed' | 'value-missing';
  /**
   * The value would swallow the rest of the file, so it is cut at its line's end. Whether that is so
   * depends on all the text that follows.
   */
  readonly open?: true;
}

// A table's name is a word; numbers and `true` in double brackets are a list in a list.
const headerLine =
  /[ \t]*\[\[?[ \t]*(?!(?:true|false|inf|nan)[ \t]*\])[A-Za-z_][\w-]*(?:[ \t]*\.[ \t]*[\w-]+)*[ \t]*\]\]?[ \t]*(?:#[^\n]*)?(?=\r?\n|$)/y;

/** True where a line begins that can only be a table header, even inside a list left open. */
export function isHeaderLine(text: string, lineStart: number): boolean {
  headerLine.lastIndex = lineStart;
  return headerLine.test(text);
}

/** Offset of the line break (or the end of the text) at or after an offset. */
export function lineBreak(text: string, from: number): number {
  const found = text.indexOf('\n', from);
  if (found === -1) return text.length;
  return found > from && text[found - 1] === '\r' ? found - 1 : found;
}

function oneLineText(text: string, start: number, quote: string): ScannedValue {
  const limit = lineBreak(text, start);
  for (let at = start + 1; at < limit; at++) {
    const letter = text[at];
    if (letter === quote) return { end: at + 1 };
    if (letter === '\\' && quote === '"') at++;
  }
  return { end: limit, fault: 'text-not-closed' };
}

function manyLineText(text: string, start: number, quote: string): ScannedValue {
  const closing = quote.repeat(3);
  for (let at = start + 3; at < text.length; at++) {
    const letter = text[at];
    if (letter === '\\' && quote === '"') at++;
    else if (letter === quote && text.startsWith(closing, at)) {
      let end = at + 3;
      while (end < at + 5 && text[end] === quote) end++;
      return { end };
    }
  }
  return { end: lineBreak(text, start), fault: 'text-not-closed', open: true };
}

function textAt(text: string, start: number): ScannedValue {
  const quote = text[start] ?? '"';
  return text.startsWith(quote.repeat(3), start)
    ? manyLineText(text, start, quote)
    : oneLineText(text, start, quote);
}

/** Where to go on behind a text or a comment inside brackets. */
function passedOver(text: string, at: number): ScannedValue {
  return text[at] === '#' ? { end: lineBreak(text, at) } : textAt(text, at);
}

/** A list or an inline table: brackets are counted, texts and comments in it are passed over. */
function bracketed(text: string, start: number): ScannedValue {
  let depth = 0;
  let open: { readonly open?: true } = {};
  for (let at = start; at < text.length; at++) {
    const letter = text[at] ?? '';
    if ('[{'.includes(letter)) depth++;
    else if (']}'.includes(letter)) {
      depth--;
      if (depth === 0) return { end: at + 1, ...open };
    } else if ('"\'#'.includes(letter)) {
      const inner = passedOver(text, at);
      if (inner.open === true) open = { open: true };
      at = inner.end - 1;
    } else if (letter === '\n' && isHeaderLine(text, at + 1)) {
      return { end: at, fault: 'list-not-closed', ...open };
    }
  }
  return { end: text.length, fault: 'list-not-closed', ...open };
}

function bare(text: string, start: number): ScannedValue {
  const limit = lineBreak(text, start);
  const comment = text.indexOf('#', start);
  let end = comment === -1 || comment > limit ? limit : comment;
  while (end > start && /[ \t]/.test(text[end - 1] ?? '')) end--;
  return end === start ? { end, fault: 'value-missing' } : { end };
}

/** Finds the end of the value that begins at an offset, just behind `=` and its spaces. */
export function scanValue(text: string, start: number): ScannedValue {
  const letter = text[start];
  if (letter === '"' || letter === "'") return textAt(text, start);
  if (letter === '[' || letter === '{') return bracketed(text, start);
  return bare(text, start);
}
