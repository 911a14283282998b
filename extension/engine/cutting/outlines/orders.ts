import type { Ground } from './ground.ts';

/** Orders in which items are laid: the largest first by area, by length, by width, by their sum. */
export function itemOrders(ground: Ground): readonly (readonly number[])[] {
  const size = (item: number): { length: number; width: number } => {
    const form = ground.forms[ground.ways[item]?.[0] ?? 0];
    return { length: form?.length ?? 0, width: form?.width ?? 0 };
  };
  const keys: readonly ((item: number) => number)[] = [
    (item) => ground.areas[item] ?? 0,
    (item) => size(item).length,
    (item) => size(item).width,
    (item) => size(item).length + size(item).width,
    (item) => Math.max(size(item).length, size(item).width),
  ];
  const items = ground.ways.map((_, item) => item);
  return keys.map((key) => [...items].sort((a, b) => key(b) - key(a) || a - b));
}
