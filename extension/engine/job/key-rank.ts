import type { Column } from './column.ts';
import { dottedWords, drawWords } from './columns.ts';

/** Where a key stands in its block. */
export interface KeyRank {
  readonly tier: number;
  readonly name: string;
  readonly place: number;
  /** Keys of one group stand together; a blank line parts the groups. */
  readonly group: string;
}

const tiers = { id: 0, column: 1, dotted: 2, unknown: 90, order: 91 };

export function compareRanks(a: KeyRank, b: KeyRank): number {
  if (a.tier !== b.tier) return a.tier - b.tier;
  if (a.name !== b.name) return a.name < b.name ? -1 : 1;
  return a.place - b.place;
}

function dottedRank(table: string, key: string): KeyRank | undefined {
  const [first = '', ...rest] = key.split('.');
  const which = dottedWords(table).indexOf(first);
  if (rest.length === 0 || which === -1) return undefined;
  const tier = tiers.dotted + which;
  if (first !== 'draw') return { tier, name: rest.join('.'), place: 0, group: key };
  const last = drawWords.indexOf(rest.at(-1) ?? '');
  const place = last === -1 ? drawWords.length : last;
  const name = rest.slice(0, -1).join('.');
  return { tier, name, place, group: `draw.${name}.${String(Math.floor(place / 3))}` };
}

/** The ranks of the keys of a table with these columns. */
export function keyRanks(table: string, columns: readonly Column[]): (key: string) => KeyRank {
  const places = new Map(columns.map((column, place) => [column.key, { column, place }]));
  return (key) => {
    if (key === 'id') return { tier: tiers.id, name: '', place: 0, group: 'id' };
    if (key === 'order') return { tier: tiers.order, name: '', place: 0, group: 'order' };
    const found = places.get(key);
    if (found !== undefined) {
      const group = `column ${String(found.column.group)}`;
      return { tier: tiers.column, name: '', place: found.place, group };
    }
    return (
      dottedRank(table, key) ?? { tier: tiers.unknown, name: key, place: 0, group: `? ${key}` }
    );
  };
}
