import { layBolt } from './bolt/lay-bolt.ts';
import type { CutAnswer, CutInstance, Report } from './instance.ts';
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
      return layBolt(instance, report);
    case 'packs':
      return choosePacks(instance);
    case 'outlines':
      throw new Error('outlines');
  }
}
