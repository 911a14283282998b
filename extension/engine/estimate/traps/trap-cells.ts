import { coreColumns } from '../../job/columns.ts';
import { plain, type Dimension } from '../../units/dimension.ts';
import type { UnitSettings } from '../../units/quantity.ts';
import { showQuantity } from '../../units/show.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { baseIn, wordIn } from '../cells.ts';
import type { TrapView, TypedFormula } from './trap.ts';

/** A base value as it is shown, in a unit or the job's own. */
export function shown(
  base: number,
  dimension: Dimension,
  as: { readonly settings: UnitSettings; readonly unit?: string },
): string {
  return showQuantity({ base, dimension }, as.settings, as.unit).text;
}

/** Columns in which people write formulas of amounts. */
const formulaColumns: ReadonlyMap<string, readonly string[]> = new Map(
  ['part', 'measure', 'check', 'task'].map((table) => [
    table,
    coreColumns(table)
      .filter(({ type }) => type.kind === 'quantity')
      .map(({ key }) => key),
  ]),
);

/** Cells of a row that hold a formula somebody typed. */
export function typedFormulas(row: AnsweredRow): readonly TypedFormula[] {
  const found: TypedFormula[] = [];
  const look = (column: string): void => {
    const { text, origin, formula } = row.cell(column);
    if (formula && origin === 'typed') found.push({ column, text: text ?? '' });
  };
  for (const column of formulaColumns.get(row.table) ?? []) look(column);
  for (const draw of row.draws) look(`draw.${draw}.use`);
  return found.slice();
}

function splitArguments(inside: string): readonly string[] {
  const found: string[] = [];
  let [depth, start] = [0, 0];
  for (let at = 0; at < inside.length; at += 1) {
    const letter = inside.charAt(at);
    if (letter === '(') depth += 1;
    else if (letter === ')') depth -= 1;
    else if (letter === ',' && depth === 0) {
      found.push(inside.slice(start, at));
      start = at + 1;
    }
  }
  return [...found, inside.slice(start)].map((text) => text.trim());
}

function closing(text: string, from: number): number {
  let depth = 1;
  for (let at = from; at < text.length; at += 1) {
    if (text[at] === '(') depth += 1;
    if (text[at] === ')') depth -= 1;
    if (depth === 0) return at;
  }
  return text.length;
}

/** The arguments, as written, of each call of a function in a formula. */
export function callsOf(formula: string, name: string): readonly (readonly string[])[] {
  const pattern = new RegExp(`(?<![A-Z.])${name.replaceAll('.', '\\.')}\\s*\\(`, 'gi');
  return [...formula.matchAll(pattern)].map((call) => {
    const from = call.index + call[0].length;
    return splitArguments(formula.slice(from, closing(formula, from)));
  });
}

/** The row that a link column of a row names, of a table. */
export function linked(
  row: AnsweredRow,
  column: string,
  to: { readonly table: string; readonly view: TrapView },
): AnsweredRow | undefined {
  const id = wordIn(row, column);
  return id === '' || id === 'none' ? undefined : to.view.row(to.table, id);
}

/** A percentage in a cell as a share. */
export function shareIn(row: AnsweredRow, column: string): number | undefined {
  return baseIn(row, column, plain);
}
