import { renewedList } from '../units/renewed-list.ts';
import { sameList } from '../units/same-list.ts';
import type { Asked } from './need.ts';
import type { OutcomeChange, WorkedRow, WorkedRows } from './outcomes.ts';

/** What is asked of one material. */
export interface Gathered {
  readonly asked: readonly Asked[];
  /** Needs that have no answer. */
  readonly missing: number;
}

/** What is asked of each material, in the order in which the rows name them first. */
export type Needed = ReadonlyMap<string, Gathered>;

interface Gathering {
  readonly asked: Asked[];
  missing: number;
}

function gathered(rows: readonly WorkedRow[]): Map<string, Gathered> {
  const found = new Map<string, Gathering>();
  const at = (material: string): Gathering => {
    const known = found.get(material);
    if (known !== undefined) return known;
    const fresh = { asked: [], missing: 0 };
    found.set(material, fresh);
    return fresh;
  };
  for (const { outcome } of rows) {
    for (const asked of outcome.asked) at(asked.material).asked.push(asked);
    for (const material of outcome.missing) at(material).missing += 1;
  }
  return found;
}

function asksOfTheSame({ before, now }: OutcomeChange): boolean {
  return (
    before.asked.length === now.asked.length &&
    before.asked.every(({ material }, index) => material === now.asked[index]?.material) &&
    sameList(before.missing, now.missing)
  );
}

/** Puts needs in the places of those that they replace. */
function replaced(needed: Needed, changes: readonly OutcomeChange[]): Needed {
  const fresh = new Map<string, Map<number, Asked>>();
  for (const { before, now } of changes) {
    now.asked.forEach((asked, index) => {
      const old = before.asked[index];
      const known = needed.get(asked.material);
      if (old === undefined || old === asked || known === undefined) return;
      const places = fresh.get(asked.material) ?? new Map<number, Asked>();
      fresh.set(asked.material, places.set(known.asked.indexOf(old), asked));
    });
  }
  const next = new Map(needed);
  for (const [material, places] of fresh) {
    const { asked = [], missing = 0 } = needed.get(material) ?? {};
    next.set(material, { asked: renewedList(asked, places), missing });
  }
  return next;
}

/** Keeps the needs of each material in the order of the rows; lists that did not change stay the same. */
export function openGathering(): (worked: WorkedRows) => Needed {
  let last: { readonly rows: readonly WorkedRow[]; readonly needed: Needed } | undefined;
  return ({ rows, changes }) => {
    if (last?.rows === rows) return last.needed;
    const stands = changes?.every(asksOfTheSame) === true;
    const needed = last !== undefined && stands ? replaced(last.needed, changes) : gathered(rows);
    last = { rows, needed };
    return needed;
  };
}
