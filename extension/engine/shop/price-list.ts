/** A line of a price list as it was given: its cells, with its number from 1. */
export interface ListLine {
  readonly line: number;
  readonly cells: readonly string[];
}

/** What the columns of a price list hold, by their place from 0. */
export interface ListColumns {
  readonly id: number | undefined;
  readonly name: number | undefined;
  readonly holds: number | undefined;
  readonly price: number | undefined;
}

/** A price list read: its lines below the heading, if it has one, and what its columns hold. */
export interface PriceList {
  readonly lines: readonly ListLine[];
  readonly columns: ListColumns;
}

const separators = ['\t', ';', ','] as const;

/** The separator that most lines have most of. */
function separatorOf(text: string): string {
  const [first = ''] = text.split('\n', 1);
  const counts = separators.map((one) => first.split(one).length);
  const most = Math.max(...counts);
  return separators[counts.indexOf(most)] ?? ',';
}

/** Splits a line at its separator; quotes hold separators and doubled quotes (RFC 4180). */
function cellsOf(line: string, separator: string): readonly string[] {
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (let index = 0; index < line.length; index++) {
    const letter = line[index] ?? '';
    if (quoted && letter === '"' && line[index + 1] === '"') {
      cell += '"';
      index += 1;
    } else if (letter === '"' && (quoted || cell.trim() === '')) quoted = !quoted;
    else if (letter === separator && !quoted) {
      cells.push(cell.trim());
      cell = '';
    } else cell += letter;
  }
  return [...cells, cell.trim()];
}

const headings: Readonly<Record<keyof ListColumns, readonly string[]>> = {
  id: ['id', 'pack', 'code', 'number', 'item number', 'article'],
  name: ['name', 'item', 'material', 'description', 'product'],
  holds: ['holds', 'size', 'contents', 'unit', 'pack size', 'quantity'],
  price: ['price', 'cost', 'each', 'unit price', 'rate', 'new price', 'net'],
};

/** A money amount as lists write it: `18.50`, `$18.50`, `18.50 USD`; no thousands. */
const moneyPattern = /^[^\d\s-]?\s?\d+(?:\.\d+)?\s*(?:[A-Z]{3})?(?:\/\w+)?$/;

function headed(cells: readonly string[]): ListColumns | undefined {
  const words = cells.map((cell) => cell.toLowerCase());
  const at = (key: keyof ListColumns): number | undefined => {
    const place = words.findIndex((word) => headings[key].includes(word));
    return place < 0 ? undefined : place;
  };
  const columns = { id: at('id'), name: at('name'), holds: at('holds'), price: at('price') };
  return columns.price === undefined ? undefined : columns;
}

/** Without a heading the last column that holds money is the price, and the first one the name. */
function guessed(lines: readonly ListLine[]): ListColumns {
  const width = Math.max(0, ...lines.map(({ cells }) => cells.length));
  const money = [...Array(width).keys()].filter((place) => {
    const filled = lines.map(({ cells }) => cells[place] ?? '').filter((cell) => cell !== '');
    return filled.length > 0 && filled.every((cell) => moneyPattern.test(cell));
  });
  const price = money.at(-1);
  const holds = width > 2 && price !== 1 ? 1 : undefined;
  return { id: undefined, name: price === 0 ? undefined : 0, holds, price };
}

/** Reads a pasted table or a CSV file; any text can be read. */
export function readPriceList(text: string): PriceList {
  const separator = separatorOf(text);
  const lines = text
    .split(/\r?\n/)
    .map((line, index) => ({ line: index + 1, cells: cellsOf(line, separator) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ''));
  const [first, ...rest] = lines;
  const columns = first === undefined ? undefined : headed(first.cells);
  return columns === undefined ? { lines, columns: guessed(lines) } : { lines: rest, columns };
}
