import type { Checked } from '../formula/checked.ts';
import type { CellRef } from '../formula/scope.ts';
import { type Filling, type GappedFormula } from './formula-templates.ts';
import type { Cell, Meaning } from './row.ts';
import { cellAt, translated, type Target } from './translate.ts';

type Formula = Extract<Meaning, { kind: 'formula' }>;

/** A translation for many rows: what it reads is told by name. */
interface Shared {
  readonly text: string;
  readonly fillings: readonly (Filling | CellRef)[];
}

const nothingBound: ReadonlyMap<CellRef, Cell> = new Map();

/** Translates formulas; a tree that many rows share is translated once. */
export function formulaTexts(target: Target): (cell: Cell, formula: Formula) => GappedFormula {
  const known = new WeakMap<Checked, Shared>();

  function sharedBy(checked: Checked): Shared {
    const found = known.get(checked);
    if (found !== undefined) return found;
    const gaps: (Filling | CellRef)[] = [];
    const open = (ref: CellRef): void => {
      gaps.push(ref);
    };
    // Numbers and references go into one list, in the order of the gaps.
    const into = { target, row: undefined, bound: nothingBound, fillings: gaps as Filling[], open };
    const made = { text: translated(checked, into), fillings: gaps };
    known.set(checked, made);
    return made;
  }

  return ({ row }, { checked, bound, shared }) => {
    if (!shared) {
      const fillings: Filling[] = [];
      return { text: translated(checked, { target, row, bound, fillings }), fillings };
    }
    const { text, fillings } = sharedBy(checked);
    const filled = fillings.map((one): Filling => {
      if (typeof one === 'number' || 'sheet' in one) return one;
      const cell = cellAt(one, { bound, target });
      return cell === undefined ? target.nothing : target.address(cell);
    });
    return { text, fillings: filled };
  };
}
