import type { SawCut } from '../instance.ts';
import type { Cut } from './tree.ts';

/**
 * The cuts of a sheet in the order they are sawn: each runs from edge to edge of the part in hand,
 * beginning with the whole sheet. `edge` is trimmed off before and `kerf` taken by every cut.
 */
export function sawCuts(
  tree: Cut,
  sheet: { readonly index: number; readonly kerf: number; readonly trim: number },
): readonly SawCut[] {
  const cuts: SawCut[] = [];
  const mm = (value: number): number => value / 1000;
  const look = (node: Cut, x: number, y: number): void => {
    if (node.way === 'piece' || node.way === 'free') return;
    const across = node.way === 'across';
    let at = across ? x : y;
    const starts: number[] = [];
    node.parts.forEach((part, order) => {
      starts.push(at);
      at += across ? part.length : part.width;
      if (order === node.parts.length - 1) return;
      const low = across ? y : x;
      const high = low + (across ? node.width : node.length);
      cuts.push({
        index: sheet.index,
        way: node.way,
        at: mm(at - sheet.kerf) + sheet.trim,
        from: mm(low) + sheet.trim,
        to: mm(high - sheet.kerf) + sheet.trim,
      });
    });
    node.parts.forEach((part, order) => {
      const start = starts[order] ?? 0;
      if (across) look(part, start, y);
      else look(part, x, start);
    });
  };
  look(tree, 0, 0);
  return cuts;
}
