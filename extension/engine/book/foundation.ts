import type { FileReading } from '../job/source.ts';
import type { Kind, Kit } from './book.ts';
import { readBuiltIn, type BuiltIn } from './built-in.ts';
import { laidRows, type LaidRow, type LaidRows, type Layer } from './layers.ts';
import { kindFrom } from './read-kinds.ts';
import { kitsFrom } from './read-kits.ts';

/** Tables of a book, in the order they are laid. */
export const bookTableNames = [
  'material',
  'pack',
  'supplier',
  'constant',
  'band',
  'kind',
  'kit',
  'question',
  'kit_row',
] as const;
export type BookTable = (typeof bookTableNames)[number];

/** What every book stands on, laid and read once. */
export interface Foundation {
  readonly head: FileReading['head'];
  readonly tables: Readonly<Record<BookTable, LaidRows>>;
  /** Kinds as they stand in a row that nothing was laid over, without what is common to the table. */
  readonly kinds: ReadonlyMap<LaidRow, Kind>;
  readonly kits: readonly Kit[];
}

function foundationOf(layers: readonly Layer[], head: FileReading['head']): Foundation {
  const entries = bookTableNames.map((table) => [table, laidRows(table, layers)] as const);
  const tables = Object.fromEntries(entries) as Record<BookTable, LaidRows>;
  return {
    head,
    tables,
    kinds: new Map([...tables.kind.values()].map((row) => [row, kindFrom(row)])),
    kits: kitsFrom({ kits: tables.kit, questions: tables.question, rows: tables.kit_row }),
  };
}

type Form = 'priced' | 'bare';

let builtIn: BuiltIn | undefined;
const foundations = new Map<Form, Foundation>();

/**
 * What comes with the program: `priced` with the demo book's invented prices, `bare` without, for
 * what a shop has not priced in its own book has no price. Its texts never change while it runs.
 */
export function foundation(form: Form): Foundation {
  const known = foundations.get(form);
  if (known !== undefined) return known;
  const { habits, demo } = (builtIn ??= readBuiltIn());
  const under = habits.map(({ tables }): Layer => ({ origin: 'built-in', tables }));
  const goods = [...demo.tables].filter(([table]) => table !== 'pack' && table !== 'kind');
  const tables = form === 'priced' ? demo.tables : new Map(goods);
  const made = foundationOf([...under, { origin: 'built-in', tables }], demo.head);
  foundations.set(form, made);
  return made;
}
