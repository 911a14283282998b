import type { Checked } from '../formula/checked.ts';
import type { CellRef } from '../formula/scope.ts';
import type { Cell, Meaning } from './row.ts';
import { referenceTo, translated, type Target } from './translate.ts';

type Formula = Extract<Meaning, { kind: 'formula' }>;

/** A translation with gaps where references go: one text more than references. */
interface Gapped {
  readonly texts: readonly string[];
  readonly refs: readonly CellRef[];
}

/** No text of the evaluator holds it. */
const gap = '\u0000';

const nothingBound: ReadonlyMap<CellRef, Cell> = new Map();

/** Translates formulas; a tree that many rows share is translated once. */
export function formulaTexts(target: Target): (cell: Cell, formula: Formula) => string {
  const known = new WeakMap<Checked, Gapped>();

  function gapped(checked: Checked): Gapped {
    const found = known.get(checked);
    if (found !== undefined) return found;
    const refs: CellRef[] = [];
    const open = (ref: CellRef): string => {
      refs.push(ref);
      return gap;
    };
    const text = translated(checked, { target, row: undefined, bound: nothingBound, open });
    const made = { texts: text.split(gap), refs };
    known.set(checked, made);
    return made;
  }

  return ({ row }, { checked, bound, shared }) => {
    const into = { target, row, bound };
    if (!shared) return translated(checked, into);
    const { texts, refs } = gapped(checked);
    return refs.reduce(
      (text, ref, index) => text + referenceTo(ref, into) + (texts[index + 1] ?? ''),
      texts[0] ?? '',
    );
  };
}
