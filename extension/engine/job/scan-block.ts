import { lineBreak, scanValue, type ScannedValue } from './scan-value.ts';

/** One `key = value` of a block; offsets count from the start of the text that was scanned. */
export interface Entry {
  /** Words of the key joined by dots, without quotes. */
  readonly key: string;
  readonly words: readonly string[];
  readonly lineStart: number;
  readonly valueStart: number;
  readonly valueEnd: number;
  /** Behind the line break that ends the value's last line, or the end of the text. */
  readonly lineEnd: number;
}

/** Something in a block that TOML does not allow, as far as a look at the line tells. */
export interface ScanFault {
  readonly code:
    | 'line-not-understood'
    | 'value-missing'
    | 'text-not-closed'
    | 'list-not-closed'
    | 'value-followed';
  readonly start: number;
  readonly end: number;
  readonly key?: string;
}

export interface ScannedBlock {
  readonly entries: readonly Entry[];
  readonly faults: readonly ScanFault[];
  /** A line of git's conflict markers stands in it. */
  readonly conflict: boolean;
  /** See `ScannedValue.open`. */
  readonly open: boolean;
  readonly end: number;
}

const blankLine = /[ \t]*(?:#[^\n]*)?(?:\r?\n|$)/y;
const marker = /(?:<{7,}|>{7,}|\|{7,}|={7,})(?:[ \r\n]|$)/y;
const keyPart = /[ \t]*(?:([\w-]+)|"((?:[^"\\\n]|\\[^\n])*)"|'([^'\n]*)')[ \t]*/y;

function matches(pattern: RegExp, text: string, at: number): boolean {
  pattern.lastIndex = at;
  return pattern.test(text);
}

function nextLine(text: string, from: number): number {
  const found = text.indexOf('\n', from);
  return found === -1 ? text.length : found + 1;
}

function unescaped(word: string): string {
  if (!word.includes('\\')) return word;
  try {
    return String(JSON.parse(`"${word}"`));
  } catch (fault) {
    if (fault instanceof SyntaxError) return word;
    throw fault;
  }
}

/** Words of the dotted key at a line's start, with the offset behind its `=`. */
function keyAt(text: string, start: number): { words: string[]; end: number } | undefined {
  const words: string[] = [];
  let at = start;
  for (;;) {
    keyPart.lastIndex = at;
    const found = keyPart.exec(text);
    if (found === null) return undefined;
    words.push(found[1] ?? found[3] ?? unescaped(found[2] ?? ''));
    at += found[0].length;
    const letter = text[at];
    at++;
    if (letter === '=') return { words, end: at };
    if (letter !== '.') return undefined;
  }
}

interface ScannedLine {
  readonly end: number;
  readonly entry?: Entry;
  readonly fault: ScanFault | undefined;
  readonly open?: boolean;
}

function valueFault(
  text: string,
  start: number,
  { key, value }: { readonly key: string; readonly value: ScannedValue },
): ScanFault | undefined {
  if (value.fault !== undefined)
    return { code: value.fault, start, end: lineBreak(text, start), key };
  const { end } = value;
  if (matches(blankLine, text, end)) return undefined;
  return { code: 'value-followed', start: end, end: lineBreak(text, end), key };
}

function entryLine(text: string, start: number): ScannedLine {
  const found = keyAt(text, start);
  if (found === undefined) {
    const end = nextLine(text, start);
    return { end, fault: { code: 'line-not-understood', start, end: lineBreak(text, start) } };
  }
  let valueStart = found.end;
  while (text[valueStart] === ' ' || text[valueStart] === '\t') valueStart++;
  const value = scanValue(text, valueStart);
  const key = found.words.join('.');
  const end = nextLine(text, value.end);
  const { words } = found;
  const entry: Entry = {
    key,
    words,
    lineStart: start,
    valueStart,
    valueEnd: value.end,
    lineEnd: end,
  };
  return { end, entry, fault: valueFault(text, start, { key, value }), open: value.open === true };
}

/** Some editors begin a file with a byte-order mark, which says nothing. */
function withoutMark(text: string, at: number): number {
  return at === 0 && text.startsWith('\uFEFF') ? 1 : at;
}

/** True where the line that begins at an offset is meant as a table header. */
export function isHeaderAt(text: string, at: number): boolean {
  let first = withoutMark(text, at);
  while (text[first] === ' ' || text[first] === '\t') first++;
  return text[first] === '[';
}

/**
 * Scans lines from an offset up to the next table header or the end of the text. It never fails:
 * whatever is not understood is a fault, and the line after it is read afresh.
 */
export function scanBlock(text: string, from: number): ScannedBlock {
  const entries: Entry[] = [];
  const faults: ScanFault[] = [];
  let conflict = false;
  let open = false;
  let at = withoutMark(text, from);
  while (at < text.length && !isHeaderAt(text, at)) {
    if (matches(blankLine, text, at)) at = nextLine(text, at);
    else if (matches(marker, text, at)) {
      conflict = true;
      at = nextLine(text, at);
    } else {
      const line = entryLine(text, at);
      if (line.entry !== undefined) entries.push(line.entry);
      if (line.fault !== undefined) faults.push(line.fault);
      open ||= line.open === true;
      at = line.end;
    }
  }
  return { entries, faults, conflict, open, end: at };
}

export interface ScannedHeader {
  readonly name: string;
  readonly array: boolean;
  /** False where brackets are missing or do not match. */
  readonly whole: boolean;
  /** Behind the header's line break. */
  readonly end: number;
}

const headerName =
  /\uFEFF?[ \t]*(\[\[?)[ \t]*([^[\]\r\n#]*?)[ \t]*(\]{0,2})[ \t]*(?:#[^\n]*)?(?:\r?\n|$)/y;

/** The table header whose line begins at an offset. */
export function scanHeader(text: string, at: number): ScannedHeader {
  const end = nextLine(text, at);
  headerName.lastIndex = at;
  const found = headerName.exec(text);
  const words = found === null ? undefined : keyAt(`${found[2] ?? ''}=`, 0)?.words;
  if (found === null || words === undefined) {
    const name = /[A-Za-z_]\w*/.exec(text.slice(at, lineBreak(text, at)))?.[0] ?? '';
    return { name, array: true, whole: false, end };
  }
  const [, opening = '', , closing = ''] = found;
  const array = opening.length === 2 || closing.length === 2;
  return { name: words.join('.'), array, whole: opening.length === closing.length, end };
}
