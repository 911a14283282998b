/** One cell of a workbook; a formula carries what it came to, for readers that do not calculate. */
export type SheetCell =
  | { readonly text: string; readonly look?: 'head' }
  | { readonly number: number; readonly look: NumberLook; readonly formula?: string };

/** How a number is shown. */
export type NumberLook = 'number' | 'money' | 'share' | 'sum';

export interface Sheet {
  readonly name: string;
  /** Rows from the top; undefined leaves a cell empty. The first is the heading. */
  readonly rows: readonly (readonly (SheetCell | undefined)[])[];
}

/** Letters of a column, from 0: A, B, … Z, AA. */
export function columnLetters(index: number): string {
  const last = String.fromCharCode(65 + (index % 26));
  return index < 26 ? last : columnLetters(Math.floor(index / 26) - 1) + last;
}

export function textCell(text: string): SheetCell | undefined {
  return text === '' ? undefined : { text };
}

/** Headings of a sheet. */
export function headings(...texts: readonly string[]): readonly SheetCell[] {
  return texts.map((text) => ({ text, look: 'head' }));
}

/** A number, or a formula for it where one comes to the same; whoever calculates must find no other. */
export function figure(
  number: number,
  look: NumberLook,
  formula?: { readonly text: string; readonly comesTo: number },
): SheetCell {
  const same = formula !== undefined && Math.abs(formula.comesTo - number) < 1e-9;
  return same ? { number, look, formula: formula.text } : { number, look };
}
