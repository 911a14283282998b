import { outlineBudgetOf } from '../budgets.ts';
import { chanceFrom } from '../chance.ts';
import type { BoltInstance, CutAnswer, Placement, Report } from '../instance.ts';
import { noRoll, rollAnswer } from '../roll-answer.ts';
import { unplacedParts } from '../unplaced.ts';
import { packRoll } from './pack-roll.ts';
import { loopsArea, partLoops } from './part-loops.ts';
import { prepared, type Prepared } from './prepare.ts';
import { slideTogether, type Lying } from './slide.ts';
import type { Places } from './ground.ts';

/** Cells across the roll. */
const across = 320;

const noBox = { x: 0, y: 0, length: 0, width: 0 };

/** The box that a part lies in, kerf taken off again. */
export function outlinePlacement(
  ready: Prepared,
  item: number,
  at: { readonly form: number; readonly x: number; readonly y: number },
  on: {
    readonly stock: string;
    readonly index: number;
    readonly kerf: number;
    /** Trimmed off the edge along the length, and off the end that parts begin at. */
    readonly trim: number;
    readonly before: number;
  },
): Placement {
  const form = ready.ground.forms[at.form];
  const drawn = form?.drawn ?? noBox;
  return {
    part: ready.parts[item]?.id ?? '',
    stock: on.stock,
    index: on.index,
    x: at.x + drawn.x - on.kerf / 2 + on.before,
    y: at.y + drawn.y - on.kerf / 2 + on.trim,
    rotation: form?.rotation ?? 0,
    mirrored: false,
    length: drawn.length,
    width: drawn.width,
  };
}

/** Parts of one bay exactly where they lie, in mm from its start. */
export function lyingIn(
  { ground }: Prepared,
  places: Places,
  bay: { readonly index: number; readonly start: number; readonly cell: number },
): { readonly items: readonly number[]; readonly lying: Lying[] } {
  const items: number[] = [];
  const lying: Lying[] = [];
  for (let item = 0; item < places.x.length; item++) {
    const form = ground.forms[places.form[item] ?? 0];
    if (places.bay[item] !== bay.index || form === undefined) continue;
    items.push(item);
    lying.push({
      loops: form.loops,
      length: form.length,
      width: form.width,
      x: ((places.x[item] ?? 0) - bay.start) * bay.cell,
      y: (places.y[item] ?? 0) * bay.cell,
    });
  }
  return { items, lying };
}

/** Lays outlines along a roll of cloth so that least of it is taken. */
export function layOutlinesAlong(instance: BoltInstance, report?: Report): CutAnswer {
  const { kerf = 0, trim = 0, parts, effort, seed } = instance;
  const stock = instance.stocks[0] ?? noRoll;
  const width = stock.width - 2 * trim + kerf;
  const cell = width / across;
  const ready = prepared(parts, kerf, cell);
  const fits = ready.ground.ways.every((ways) =>
    ways.some((form) => (ready.ground.forms[form]?.rows ?? Infinity) <= across),
  );
  if (!fits) {
    const small = parts.filter((_, type) => fitsRoll(ready, type));
    const large = parts.filter((part) => !small.includes(part));
    const answer = layOutlinesAlong({ ...instance, parts: small }, report);
    const unplaced = unplacedParts(
      large.flatMap((part) => Array<typeof part>(part.count).fill(part)),
    );
    return { ...answer, proven: false, unplaced };
  }
  const area = parts.reduce((sum, part) => sum + part.count * loopsArea(partLoops(part)), 0);
  const found = packRoll({
    ground: ready.ground,
    rows: across,
    bound: Math.ceil(area / width / cell),
    budget: outlineBudgetOf(effort),
    chance: chanceFrom(seed ?? 1),
    work: { done: 0, report },
  });
  const { items, lying } = lyingIn(ready, found.places, { index: 0, start: 0, cell });
  slideTogether(lying, { x: 0, y: 0 });
  const placements = items.map((item, at) =>
    outlinePlacement(
      ready,
      item,
      { form: found.places.form[item] ?? 0, x: lying[at]?.x ?? 0, y: lying[at]?.y ?? 0 },
      { stock: stock.id, index: 0, kerf, trim, before: 0 },
    ),
  );
  const length = Math.max(0, ...placements.map((one) => one.x + one.length));
  const leastLength = area / Math.max(1e-9, stock.width);
  return rollAnswer({ stock, length, leastLength, area, placements, unplaced: [] });
}

function fitsRoll({ ground }: Prepared, type: number): boolean {
  return ground.forms.some((form) => form.type === type && form.rows <= across);
}
