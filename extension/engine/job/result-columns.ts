import { area, length, mass, money, time, volume, type Dimension } from '../units/dimension.ts';
import type { Column } from './column.ts';

type Draft = readonly [key: string, dimension: Dimension | 'any', label: string, help: string];

const ofPart: readonly Draft[] = [
  ['area', area, 'finished surface', 'Surface that is seen or wetted; what is bought is more.'],
  ['perimeter', length, 'way round', 'Length of the outline.'],
  ['wall', area, 'ring wall', 'Surface of the ring’s wall.'],
  ['shadow', area, 'ring shadow', 'What the ring hides of the base, seen square on.'],
  ['low', length, 'low side', 'Height of the ring where it is lowest.'],
  ['high', length, 'high side', 'Height of the ring where it is highest.'],
  ['strip', length, 'strip depth', 'Depth of the strip itself at the centre.'],
  ['radius', length, 'tightest bend', 'Smallest radius the strip is bent to.'],
  ['volume', volume, 'volume', 'Space it holds or takes.'],
  ['mass', mass, 'mass', 'What it weighs.'],
];

const lateOfMaterial: readonly Draft[] = [
  ['need', 'any', 'need', 'Material for the whole job, waste included.'],
  ['buy', money, 'buy', 'Money out now, in whole packs.'],
  ['charge', money, 'charge', 'Money in the price.'],
];

const lateOfTask: readonly Draft[] = [
  ['time', time, 'time', 'For the whole job.'],
  ['charge', money, 'charge', 'Money in the price.'],
];

function columns(
  table: string,
  drafts: readonly Draft[],
  computed: 'cell' | 'late',
): readonly Column[] {
  return drafts.map(([key, dimension, label, help]) => ({
    table,
    key,
    label,
    help,
    type: { kind: 'quantity', dimension },
    computed,
  }));
}

const results: ReadonlyMap<string, readonly Column[]> = new Map([
  ['part', [...columns('part', ofPart, 'cell'), ...columns('part', lateOfMaterial, 'late')]],
  ['driver', columns('driver', lateOfMaterial, 'late')],
  ['task', columns('task', lateOfTask, 'late')],
  ['charge', columns('charge', lateOfTask.slice(1), 'late')],
]);

/**
 * Figures that are worked out and never stored. `cell` ones may be read by formulas, `late` ones come
 * from the estimate and may not. Kinds may add results of their own.
 */
export function resultColumns(table: string): readonly Column[] {
  return results.get(table) ?? [];
}
