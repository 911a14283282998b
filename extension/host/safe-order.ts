import type { Edit } from '../engine/index.ts';

/**
 * Edits name rows as they are before the gesture. Those that take a name away come last, and of rows
 * with one id the last first, so that every edit finds its row.
 */
export function inSafeOrder(edits: readonly Edit[]): readonly Edit[] {
  const rank = (edit: Edit): number =>
    edit.kind === 'rename-row' ? 2 : edit.kind === 'delete-row' ? 1 : 0;
  const occurrence = (edit: Edit): number =>
    edit.kind === 'rename-row' || edit.kind === 'delete-row' ? (edit.row.occurrence ?? 0) : 0;
  return [...edits].sort((one, two) => rank(one) - rank(two) || occurrence(two) - occurrence(one));
}
