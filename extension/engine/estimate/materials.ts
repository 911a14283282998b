import { sameList } from '../units/same-list.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { wordIn } from './cells.ts';
import { readMaterial, type MaterialFacts } from './material.ts';
import type { BillTables } from './table-changes.ts';

export interface Materials {
  /** The facts of every material; `changed` names those that are not as before (`material/id`). */
  readonly update: (
    tables: BillTables,
    keys: ReadonlySet<string>,
  ) => {
    readonly materials: ReadonlyMap<string, MaterialFacts>;
    readonly changed: readonly string[];
  };
}

interface Known {
  readonly row: AnsweredRow;
  readonly packs: readonly AnsweredRow[];
  readonly prices: readonly AnsweredRow[];
  readonly facts: MaterialFacts;
}

const noPacks: readonly AnsweredRow[] = [];

function packsByMaterial(
  packs: readonly AnsweredRow[],
): ReadonlyMap<string, readonly AnsweredRow[]> {
  const found = new Map<string, AnsweredRow[]>();
  for (const pack of packs) {
    const material = wordIn(pack, 'material');
    const list = found.get(material);
    if (list === undefined) found.set(material, [pack]);
    else list.push(pack);
  }
  return found;
}

// Prices held for the job, by the pack they are of.
function pricesByPack(prices: readonly AnsweredRow[]): ReadonlyMap<string, readonly AnsweredRow[]> {
  const found = new Map<string, AnsweredRow[]>();
  for (const price of prices) {
    const pack = wordIn(price, 'pack');
    found.set(pack, [...(found.get(pack) ?? []), price]);
  }
  return found;
}

/** Keeps what is read of materials and packs for as long as their rows stay the same. */
export function openMaterials(settings: UnitSettings, useStock = false): Materials {
  let known = new Map<string, Known>();
  let materials: ReadonlyMap<string, MaterialFacts> = new Map();
  return {
    update: (tables, keys) => {
      const touched = [...keys].some((key) => /^(?:material|pack|price)\//.test(key));
      if (!touched) return { materials, changed: [] };
      const packs = packsByMaterial(tables.get('pack') ?? []);
      const held = pricesByPack(tables.get('price') ?? []);
      const next = new Map<string, Known>();
      const changed = [...known.keys()].map((id) => `material/${id}`);
      const same = new Set<string>();
      for (const row of tables.get('material') ?? []) {
        const own = packs.get(row.id) ?? noPacks;
        const prices = own.flatMap((pack) => held.get(pack.id) ?? noPacks);
        const before = known.get(row.id);
        const reusable =
          before?.row === row && sameList(before.packs, own) && sameList(before.prices, prices);
        if (reusable) same.add(`material/${row.id}`);
        else changed.push(`material/${row.id}`);
        next.set(
          row.id,
          reusable
            ? before
            : {
                row,
                packs: own,
                prices,
                facts: readMaterial(row, { packs: own, prices, useStock }, settings),
              },
        );
      }
      known = next;
      materials = new Map([...known].map(([id, { facts }]) => [id, facts]));
      return { materials, changed: [...new Set(changed)].filter((key) => !same.has(key)) };
    },
  };
}
