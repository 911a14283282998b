import type { CutAnswer, Part } from './instance.ts';

/** Parts that found no place, counted together. */
export function unplacedParts(parts: readonly Part[]): CutAnswer['unplaced'] {
  const counts = new Map<string, number>();
  for (const { id } of parts) counts.set(id, (counts.get(id) ?? 0) + 1);
  return [...counts].map(([part, count]) => ({ part, count }));
}
