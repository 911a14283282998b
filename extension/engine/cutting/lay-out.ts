import { layBolt } from './bolt/lay-bolt.ts';
import type { CutAnswer, CutInstance, Report } from './instance.ts';
import { layHeld } from './locked/lay-held.ts';
import { layOutlines, leastOfOutlines } from './outlines/lay-outlines.ts';
import { layOutlinesAlong } from './outlines/lay-roll.ts';
import { choosePacks } from './packs/choose-packs.ts';
import { layRectangles, leastSheets } from './rectangles/lay-rectangles.ts';
import { layStrips } from './strips/lay-strips.ts';

/** Lays out any instance; the same instance gives the same answer on every machine. */
export function layOut(instance: CutInstance, report?: Report): CutAnswer {
  switch (instance.kind) {
    case 'rectangles':
      return instance.fixed === undefined
        ? layRectangles(instance, report)
        : layHeld(instance, { lay: (one) => layOut(one, report), least: leastSheets(instance) });
    case 'strips':
      return layStrips(instance, report);
    case 'bolt':
      return instance.parts.some(({ points }) => points !== undefined)
        ? layOutlinesAlong(instance, report)
        : layBolt(instance, report);
    case 'packs':
      return choosePacks(instance);
    case 'outlines':
      return instance.fixed === undefined
        ? layOutlines(instance, report)
        : layHeld(instance, {
            lay: (one) => layOut(one, report),
            least: leastOfOutlines(instance),
          });
  }
}
