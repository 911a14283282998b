/**
 * Rows that are the same in all versions and have nothing to do with what changed need not be read
 * cell by cell. They are shortened to their header, id and order before a merge and put back after it,
 * so that the time of a merge hangs on what changed and not on how long the job is.
 */
export interface Shortened {
  readonly texts: readonly string[];
  /** A merged text with the rows as they were. */
  readonly whole: (text: string) => string;
}

/** Tables that say what other rows mean are always read. */
const loud = /^[ \t]*\[\[?[ \t]*(?:column|kind|job|book)\b/;

const rowStart = /^(?=[ \t]*\[)/m;
const idLine = /^id = "([a-z][a-z0-9_]*)"[ \t]*\r?\n/gm;
const orderLine = /^order = [-\d.]+[ \t]*\r?\n/gm;

/** Length of a row without the blank lines and remarks at its end, which may belong to the next row. */
function bodyLength(text: string): number {
  const lines = text.split('\n');
  const last = lines.findLastIndex((line) => !/^\s*(?:#|$)/.test(line));
  return Math.min(text.length, lines.slice(0, last + 1).join('\n').length + 1);
}

interface Chunk {
  readonly text: string;
  readonly id: string;
  /** The header's and the id's line, by which it is found again. */
  readonly name: string;
  /** Header, id and order. */
  readonly head: string;
  /** All lines down to the last key. */
  readonly body: string;
}

function chunkOf(text: string): Chunk | undefined {
  const header = /^[ \t]*\[\[\w+\]\][ \t]*\r?\n/.exec(text)?.[0];
  const ids = [...text.matchAll(idLine)];
  const orders = [...text.matchAll(orderLine)];
  const [id] = ids;
  if (header === undefined || id?.[1] === undefined || loud.test(text)) return undefined;
  const body = text.slice(0, bodyLength(text));
  if (ids.length > 1 || orders.length > 1 || !body.endsWith('\n')) return undefined;
  const name = header + id[0];
  return { text, id: id[1], name, head: name + (orders[0]?.[0] ?? ''), body };
}

function idsOf(chunks: readonly (Chunk | undefined)[]): ReadonlySet<string> {
  return new Set(chunks.flatMap((chunk) => (chunk === undefined ? [] : [chunk.id])));
}

/** The ids that not all versions have. */
function strangers(all: readonly ReadonlySet<string>[]): readonly string[] {
  const words = new Set(all.flatMap((ids) => [...ids]));
  return [...words].filter((id) => !all.every((ids) => ids.has(id)));
}

function countsByText(texts: readonly string[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const text of texts) counts.set(text, (counts.get(text) ?? 0) + 1);
  return counts;
}

interface Quiet {
  /** Rows that may be shortened, by the two lines they begin with. */
  readonly rows: ReadonlyMap<string, Chunk>;
  readonly strange: readonly string[];
}

function quietRows(versions: readonly (readonly string[])[]): Quiet {
  const known = new Map<string, Chunk | undefined>();
  const read = (text: string): Chunk | undefined => {
    if (!known.has(text)) known.set(text, chunkOf(text));
    return known.get(text);
  };
  const chunks = versions.map((texts) => texts.map(read));
  const strange = strangers(chunks.map(idsOf));
  const word = strange.length === 0 ? undefined : new RegExp(`\\b(?:${strange.join('|')})\\b`);
  const names = chunks.map((list) => countsByText(list.map((one) => one?.name ?? '')));
  const texts = versions.map((list) => new Set(list));
  const rows = new Map<string, Chunk>();
  for (const chunk of chunks[0] ?? []) {
    if (chunk === undefined || word?.test(chunk.text) === true) continue;
    const once = names.every((counts) => counts.get(chunk.name) === 1);
    if (once && texts.every((all) => all.has(chunk.text))) rows.set(chunk.name, chunk);
  }
  return { rows, strange };
}

function nameOf(text: string): string {
  const first = text.indexOf('\n') + 1;
  return text.slice(0, text.indexOf('\n', first) + 1);
}

function headerOf(text: string): string {
  return text.slice(0, text.indexOf('\n') + 1);
}

/** Rows next to which a new row may be put: those need to be seen. */
function nextToNew(first: readonly string[], { rows, strange }: Quiet): ReadonlySet<string> {
  const kept = new Set<string>();
  const ids = first.map((text) => rows.get(nameOf(text))?.id);
  for (const header of new Set(first.map(headerOf))) {
    for (const id of strange) {
      const above = first.findLastIndex((text, index) => {
        const own = ids[index];
        return own !== undefined && own <= id && headerOf(text) === header;
      });
      for (const text of first.slice(Math.max(0, above), above + 2)) kept.add(text);
    }
  }
  return kept;
}

/** Rows whose neighbours are quiet too and the same in all versions: those can be left out altogether. */
function hiddenRows(versions: readonly (readonly string[])[], quiet: Quiet): ReadonlySet<string> {
  const [first = []] = versions;
  const isQuiet = (text: string | undefined): text is string =>
    text !== undefined && quiet.rows.has(nameOf(text));
  const places = versions.map((list) => new Map(list.map((text, index) => [text, index])));
  const seen = nextToNew(first, quiet);
  const hidden = first.filter((text, index) => {
    const above = first[index - 1];
    const below = first[index + 1];
    if (!isQuiet(text) || !isQuiet(above) || !isQuiet(below) || seen.has(text)) return false;
    const header = headerOf(text);
    if (headerOf(above) !== header || headerOf(below) !== header) return false;
    return versions.every((list, version) => {
      const at = places[version]?.get(text) ?? -1;
      return list[at - 1] === above && list[at + 1] === below;
    });
  });
  return new Set(hidden);
}

/** Hidden rows by the row above them that is seen. */
function hiddenBelow(
  first: readonly string[],
  hidden: ReadonlySet<string>,
): ReadonlyMap<string, string> {
  const below = new Map<string, string>();
  let above = '';
  for (const text of first) {
    if (hidden.has(text)) below.set(above, (below.get(above) ?? '') + text);
    else above = nameOf(text);
  }
  return below;
}

/** Shortens or leaves out the rows that a merge of these texts has nothing to do with. */
export function withoutQuietRows(texts: readonly string[]): Shortened {
  // Texts of several lines may hold lines that look like headers.
  if (texts.some((text) => /'''|"""/.test(text))) return { texts, whole: (text) => text };
  const versions = texts.map((text) => text.split(rowStart));
  const quiet = quietRows(versions);
  const hidden = hiddenRows(versions, quiet);
  const below = hiddenBelow(versions[0] ?? [], hidden);
  const short = (text: string): string => {
    if (hidden.has(text)) return '';
    const chunk = quiet.rows.get(nameOf(text));
    return chunk?.text === text ? chunk.head + text.slice(chunk.body.length) : text;
  };
  const long = (text: string): string => {
    const chunk = quiet.rows.get(nameOf(text));
    if (chunk === undefined || !text.startsWith(chunk.head)) return text;
    return chunk.body + text.slice(chunk.head.length) + (below.get(chunk.name) ?? '');
  };
  return {
    texts: versions.map((chunks) => chunks.map(short).join('')),
    whole: (text) => text.split(rowStart).map(long).join(''),
  };
}
