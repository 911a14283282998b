/** Cells as lines of columns. */
export type Block = readonly (readonly string[])[];

/** Reads tab-separated text as spreadsheets write it: quoted fields may hold tabs, newlines and "". */
export function readTsv(text: string): Block {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  while (at <= text.length) {
    const field = text[at] === '"' ? quotedField(text, at) : undefined;
    const { value, end } = field ?? plainField(text, at);
    row.push(value);
    const stop = text[end];
    at = end + 1;
    if (stop === '\t') continue;
    rows.push(row);
    row = [];
    if (stop === '\r' && text[at] === '\n') at += 1;
    // A newline at the very end closes the last line; it does not begin another.
    if (stop === undefined || at >= text.length) break;
  }
  return rows;
}

interface Field {
  readonly value: string;
  readonly end: number;
}

function isFieldEnd(char: string | undefined): boolean {
  return char === undefined || char === '\t' || char === '\n' || char === '\r';
}

function plainField(text: string, start: number): Field {
  let end = start;
  while (!isFieldEnd(text[end])) end += 1;
  return { value: text.slice(start, end), end };
}

// A field that merely begins with a quotation mark (`"A" pillar`) is not a quoted field.
function quotedField(text: string, start: number): Field | undefined {
  let value = '';
  let at = start + 1;
  for (;;) {
    const quote = text.indexOf('"', at);
    if (quote < 0) return undefined;
    value += text.slice(at, quote);
    if (text[quote + 1] === '"') {
      value += '"';
      at = quote + 2;
    } else {
      return isFieldEnd(text[quote + 1]) ? { value, end: quote + 1 } : undefined;
    }
  }
}

/** Writes cells as tab-separated text; fields with tabs, newlines or a leading quote are quoted. */
export function writeTsv(block: Block): string {
  return block
    .map((row) =>
      row
        .map((cell) => (/[\t\n\r]|^"/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell))
        .join('\t'),
    )
    .join('\n');
}

/** A cell on its way to the clipboard: what other programs see, and what this grid takes back. */
export interface CopiedCell {
  readonly shown: string;
  readonly typed: string;
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');
}

function cellHtml({ shown, typed }: CopiedCell): string {
  const kept = escaped(typed).replaceAll('\n', '&#10;');
  return `<td data-typed="${kept}">${escaped(shown).replaceAll('\n', '<br>')}</td>`;
}

/** Writes cells as a table for other programs; `data-typed` keeps formulas for this one. */
export function writeHtmlTable(block: readonly (readonly CopiedCell[])[]): string {
  const rows = block.map((row) => `<tr>${row.map(cellHtml).join('')}</tr>`);
  return `<table data-panelwright="cells">${rows.join('')}</table>`;
}

/** The typed texts of a table that `writeHtmlTable` wrote; `undefined` for any other HTML. */
export function readOwnHtml(html: string): Block | undefined {
  if (!html.includes('data-panelwright')) return undefined;
  // Parsed apart from the page and read as text only: nothing in it runs.
  const page = new DOMParser().parseFromString(html, 'text/html');
  const table = page.querySelector('table[data-panelwright]');
  if (table === null) return undefined;
  return [...table.querySelectorAll('tr')].map((row) =>
    [...row.querySelectorAll('td')].map((cell) => cell.getAttribute('data-typed') ?? ''),
  );
}
