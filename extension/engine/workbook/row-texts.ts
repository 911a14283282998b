import type { Book, Draw, Kind } from '../book/book.ts';
import type { CellText } from './row.ts';

/** Tables whose rows have a kind. */
const kindTables: ReadonlySet<string> = new Set(['part', 'task', 'check', 'charge']);

export function hasKinds(table: string): boolean {
  return kindTables.has(table);
}

/** Text that switches a material or a draw off. */
export const offWord = 'none';

export interface RowTexts {
  readonly cells: ReadonlyMap<string, CellText>;
  readonly draws: readonly string[];
}

/** A row's texts laid over what its kind and its table say of a cell left blank. */
export interface RowMeaning {
  readonly table: string;
  readonly typed: ReadonlyMap<string, string>;
  readonly under: ReadonlyMap<string, string> | undefined;
  readonly kind: Kind | undefined;
  readonly book: Book;
}

type Laid = readonly (readonly [string, CellText])[];

function laidTexts(texts: ReadonlyMap<string, string>, origin: CellText['origin']): Laid {
  return [...texts].flatMap(([column, text]) => (text === '' ? [] : [[column, { text, origin }]]));
}

/** Remembers what is made of an object that many rows share. */
function madeOnce<Key extends object, Made>(make: (key: Key) => Made): (key: Key) => Made {
  const known = new WeakMap<Key, Made>();
  return (key) => {
    const found = known.get(key) ?? make(key);
    known.set(key, found);
    return found;
  };
}

const defaultsIn = madeOnce((texts: Kind['defaults']): Laid => laidTexts(texts, 'default'));
const resultsIn = madeOnce((texts: Kind['results']): Laid => laidTexts(texts, 'computed'));
const textsOfDraw = madeOnce(({ name, cells }: Draw): Laid =>
  [...cells].flatMap(([key, text]) =>
    text === '' ? [] : [[`draw.${name}.${key}`, { text, origin: 'default' }]],
  ),
);

function lay(cells: Map<string, CellText>, laid: Laid): void {
  for (const [column, text] of laid) if (!cells.has(column)) cells.set(column, text);
}

function drawNames(typed: ReadonlyMap<string, string>, draws: readonly Draw[]): readonly string[] {
  const names = new Set(draws.map((draw) => draw.name));
  for (const column of typed.keys()) {
    const name = column.startsWith('draw.') ? /^draw\.([^.]+)\./.exec(column)?.[1] : undefined;
    if (name !== undefined) names.add(name);
  }
  return [...names];
}

function layDraw(cells: Map<string, CellText>, draw: Draw): void {
  const material = `draw.${draw.name}.material`;
  const chosen = cells.get(material)?.text ?? draw.cells.get('material');
  for (const [column, text] of textsOfDraw(draw)) {
    // What a draw that is switched off would have been worked from is nobody's question.
    if (chosen === offWord && column !== material) continue;
    if (!cells.has(column)) cells.set(column, text);
  }
}

/**
 * The text of each cell of a row: typed, else the kind's default, else the kind's result, else the
 * default of its table. Draws of the kind are cells too, under `draw.NAME.`.
 */
export function textsOfRow({ table, typed, under, kind, book }: RowMeaning): RowTexts {
  const cells = new Map<string, CellText>();
  typed.forEach((text, column) => {
    if (text !== '') cells.set(column, { text, origin: 'typed' });
  });
  if (under !== undefined) lay(cells, laidTexts(under, 'default'));
  const common = book.kinds.get(table);
  for (const one of new Set([kind, common])) {
    if (one === undefined) continue;
    lay(cells, defaultsIn(one.defaults));
    lay(cells, resultsIn(one.results));
  }
  const draws = kind?.draws ?? [];
  for (const draw of draws) layDraw(cells, draw);
  for (const { name, formula } of kind?.rules ?? []) {
    cells.set(`rule.${name}`, { text: formula, origin: 'computed' });
  }
  return { cells, draws: drawNames(typed, draws) };
}
