import { sameList } from '../../units/same-list.ts';
import type { Part } from '../instance.ts';
import { formOf, type Form } from './forms.ts';
import type { Ground } from './ground.ts';
import { openNoFits } from './no-fit.ts';
import { grownLoops, loopsArea, partLoops } from './part-loops.ts';

/** Parts made ready: one item a copy, with the forms it may take. */
export interface Prepared {
  readonly ground: Ground;
  /** The part of each item. */
  readonly parts: readonly Part[];
}

const quarters = [0, 90, 180, 270];

/** The ways of a part that look different: a disc has one, a rectangle two. */
function distinct(forms: readonly Form[]): readonly Form[] {
  return forms.filter((form, at) => !forms.slice(0, at).some((other) => isAlike(form, other)));
}

function isAlike(a: Form, b: Form): boolean {
  return (
    a.fineColumns === b.fineColumns &&
    a.fineRows === b.fineRows &&
    sameList(a.raster.first, b.raster.first) &&
    sameList(a.raster.spans, b.raster.spans)
  );
}

/** Rasters of all parts on a grid of `cell` mm, kerf included. */
export function prepared(parts: readonly Part[], kerf: number, cell: number): Prepared {
  const forms: Form[] = [];
  const ways: (readonly number[])[] = [];
  const areas: number[] = [];
  const items: Part[] = [];
  parts.forEach((part, type) => {
    const drawn = partLoops(part);
    const loops = { drawn, grown: grownLoops(drawn, kerf) };
    const turns = part.rotations ?? quarters;
    const made = distinct(
      turns.map((rotation) => formOf(loops, { index: 0, type, rotation }, cell)),
    );
    const own = made.map((form) => {
      forms.push({ ...form, index: forms.length });
      return forms.length - 1;
    });
    const area = loopsArea(loops.grown);
    for (let copy = 0; copy < part.count; copy++) {
      items.push(part);
      ways.push(own);
      areas.push(area);
    }
  });
  return { ground: { forms, noFits: openNoFits(forms), ways, areas }, parts: items };
}
