/** Line break that a file uses. */
export function newlineOf(text: string): string {
  const first = text.indexOf('\n');
  return first > 0 && text[first - 1] === '\r' ? '\r\n' : '\n';
}

/** Start of the line above the one that begins at an offset; undefined at the top of the text. */
export function lineAbove(text: string, lineStart: number): number | undefined {
  if (lineStart === 0) return undefined;
  return lineStart === 1 ? 0 : text.lastIndexOf('\n', lineStart - 2) + 1;
}

/** Start of the line below; the end of the text where there is none. */
export function lineBelow(text: string, lineStart: number): number {
  const found = text.indexOf('\n', lineStart);
  return found === -1 ? text.length : found + 1;
}

function lineAt(text: string, lineStart: number): string {
  return text.slice(lineStart, lineBelow(text, lineStart));
}

/** True for a line with nothing on it; the end of the text is none. */
export function isBlankLine(text: string, lineStart: number): boolean {
  return lineStart < text.length && lineAt(text, lineStart).trim() === '';
}

export function isCommentLine(text: string, lineStart: number): boolean {
  return /^[ \t]*#/.test(lineAt(text, lineStart));
}

/**
 * Start of the comment lines that stand directly above a line, or of the line itself. Nothing above
 * `top` is looked at: a text of many lines may hold lines that begin with #.
 */
export function withCommentsAbove(text: string, lineStart: number, top: number): number {
  let start = lineStart;
  for (;;) {
    const above = lineAbove(text, start);
    if (above === undefined || above < top || !isCommentLine(text, above)) return start;
    start = above;
  }
}

/** End of the comment lines that stand directly below, if blank lines or nothing follow them. */
export function withCommentsBelow(text: string, end: number): number {
  let at = end;
  while (at < text.length && isCommentLine(text, at)) at = lineBelow(text, at);
  return at >= text.length || isBlankLine(text, at) ? at : end;
}

/** End of the blank lines that begin at an offset. */
export function afterBlankLines(text: string, start: number): number {
  let at = start;
  while (isBlankLine(text, at)) at = lineBelow(text, at);
  return at;
}

/** Start of the blank lines that end at an offset. */
export function beforeBlankLines(text: string, end: number): number {
  let start = end;
  for (;;) {
    const above = lineAbove(text, start);
    if (above === undefined || !isBlankLine(text, above)) return start;
    start = above;
  }
}

/** Lines to insert where a line begins; at the end of a text without a last line break they follow one. */
export function insertedLines(text: string, at: number, lines: string, newline: string): string {
  if (at < text.length || text === '' || text.endsWith('\n')) return lines;
  return newline + lines.slice(0, lines.length - newline.length);
}
