import { layBolt } from './bolt/lay-bolt.ts';
import type { CutAnswer, CutInstance, Report } from './instance.ts';
import { layOutlines } from './outlines/lay-outlines.ts';
import { layOutlinesAlong } from './outlines/lay-roll.ts';
import { choosePacks } from './packs/choose-packs.ts';
import { layRectangles } from './rectangles/lay-rectangles.ts';
import { layStrips } from './strips/lay-strips.ts';

/** Lays out any instance; the same instance gives the same answer on every machine. */
export function layOut(instance: CutInstance, report?: Report): CutAnswer {
  switch (instance.kind) {
    case 'rectangles':
      return layRectangles(instance, report);
    case 'strips':
      return layStrips(instance, report);
    case 'bolt':
      return instance.parts.some(({ points }) => points !== undefined)
        ? layOutlinesAlong(instance, report)
        : layBolt(instance, report);
    case 'packs':
      return choosePacks(instance);
    case 'outlines':
      return layOutlines(instance, report);
  }
}
