import { suggestion } from '../formula/near-name.ts';
import type { ColumnType } from '../job/column.ts';
import { readLiteral, type LiteralContext } from './literals.ts';
import type { RowStore } from './row-store.ts';
import { hasKinds } from './row-texts.ts';
import type { Cell } from './row.ts';
import type { Surroundings } from './scope.ts';
import { faulty, nothing, type Understood } from './understood.ts';
import { workbookProblem } from './workbook-problems.ts';

/** Columns whose figure may be so many of a material: `25 each`. */
const countable: ReadonlySet<string> = new Set(['use', 'qty', 'holds', 'step', 'least']);

/** The word in which a material is counted that does not say one. */
const countWords: Readonly<Record<string, string>> = {
  sheet: 'sheet',
  piece: 'each',
  aerosol: 'can',
};

/** Texts of a type that are remembered at once. */
const mostTexts = 5000;

/** Word that a material is counted by, of the cells its unit and form stand in (last of those read). */
function countWordOf(reads: readonly Cell[]): string | undefined {
  if (reads.length < 2) return undefined;
  const [unit, form] = reads.slice(-2);
  return unit?.text?.text ?? countWords[form?.text?.text ?? ''];
}

/** Cells that say in which word a material is counted where this cell stands. */
function countedBy(cell: Cell, watches: string[], store: RowStore): readonly Cell[] {
  const last = cell.column.slice(cell.column.lastIndexOf('.') + 1);
  if (!countable.has(last)) return [];
  if (cell.row.table === 'material') {
    return [store.cell(cell.row, 'unit'), store.cell(cell.row, 'form')];
  }
  const link = store.cell(cell.row, `${cell.column.slice(0, -last.length)}material`);
  const id = link.text?.text ?? '';
  watches.push(`name:${id}`);
  const [material] = store.named('material', id);
  if (material === undefined) return [link];
  return [link, store.cell(material, 'unit'), store.cell(material, 'form')];
}

function literals(around: Surroundings, countWord: string | undefined): LiteralContext {
  const { store, settings, outlines } = around;
  return {
    settings,
    outlines,
    countWord,
    linkable: (tables, id) =>
      tables.reduce((count, table) => count + store.named(table, id).length, 0),
    ids: (tables) => tables.flatMap((table) => store.rows(table).map((row) => row.id)),
  };
}

/** Reads literals: what each means, and which other cells that hangs on. */
export function openLiterals(around: Surroundings): (cell: Cell, text: string) => Understood {
  const values = new Map<ColumnType, Map<string, Understood>>();

  function read(cell: Cell, text: string, declared: ColumnType | undefined): Understood {
    const watches = declared?.kind === 'link' ? [`name:${text}`] : [];
    const plainly = readLiteral(cell, text, declared, literals(around, undefined));
    // A text that is no value may be a count, in the word its material is counted by.
    const reads = plainly.ok ? [] : countedBy(cell, watches, around.store);
    const word = plainly.ok ? undefined : countWordOf(reads);
    const found =
      word === undefined ? plainly : readLiteral(cell, text, declared, literals(around, word));
    if (!found.ok && declared?.kind === 'link') {
      // The name suggested may go, and a nearer one may come.
      watches.push(...declared.tables.map((table) => `table:${table}`));
    }
    if (!found.ok) return faulty(cell, found.problem, { watches, reads });
    const { value, type } = found.value;
    const meaning = { kind: 'literal', value } as const;
    const understood: Understood = { ...nothing, meaning, type, watches, reads };
    if (declared !== undefined && plainly.ok) keepValue(declared, text, understood);
    return understood;
  }

  /** Most texts stand in many rows; but for links, what they say depends on the column's type alone. */
  function keepValue(type: ColumnType, text: string, understood: Understood): void {
    if (type.kind === 'link') return;
    const texts = values.get(type) ?? new Map<string, Understood>();
    if (texts.size > mostTexts) texts.clear();
    values.set(type, texts.set(text, understood));
  }

  function kind(cell: Cell, text: string): Understood {
    const { table } = cell.row;
    const found = around.book.kinds.get(text);
    if (found?.table === table && text !== table) {
      const value = { kind: 'text', text } as const;
      return { ...nothing, meaning: { kind: 'literal', value }, type: { kind: 'text' } };
    }
    const known = [...around.book.kinds.values()].filter((one) => one.table === table);
    const ids = known.map((one) => one.id).filter((id) => id !== table);
    const details = { table, kind: text, suggestion: suggestion(text, ids) };
    return faulty(cell, workbookProblem('kind-unknown', details));
  }

  return (cell, text) => {
    if (cell.column === 'kind' && hasKinds(cell.row.table)) return kind(cell, text);
    const declared = around.columns.declared(cell.row.table, cell.column);
    const known = declared && values.get(declared)?.get(text);
    return known ?? read(cell, text, declared);
  };
}
