import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { numberOf, shown } from '../../../helpers/trade-call.ts';

describe('router functions', () => {
  test.each([
    ['BEARING.OFFSET(1in, 1 1/8in)', 'the bearing (1 1/8 in) is larger than the cutter (1 in)'],
    ['BEARING.OFFSET(0in, 1in)', 'cutter is 0 in'],
    ['BEARING.SIZE(1in, 1/2in)', 'no bearing is that small'],
    ['BEARING.SIZE(1in, -1/8in)', 'offset is -1/8 in'],
    ['BUSHING.OFFSET(1/2in, 1/2in)', 'the bit (1/2 in) is not smaller than the bushing'],
    ['BUSHING.TEMPLATE(6in, 1/2in, 3/4in, inside)', 'is not smaller than the bushing'],
    ['BUSHING.TEMPLATE(1/8in, 3/4in, 1/2in, outside)', 'nothing is left of 1/8 in'],
    ['BUSHING.TEMPLATE(6in, 3/4in, 1/2in, left)', 'BUSHING.TEMPLATE needs side'],
    ['JIG.RADIUS(1/2in, 3/4in, hole)', 'is not smaller than the hole'],
    ['HOLESAW.SIZE(6 1/8in)', 'above the stock series, which ends at 6 in'],
    ['GRILLE.SIZE(1/4in, 1/16in, 1/32in)', 'nothing is left of 1/4 in'],
    ['GRILLE.SIZE(8in, 1/16in, 1/32in, 1.5)', 'layers is 1.5; it must be a whole number from 0'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });

  test('the bearing that an offset asks for leaves that offset', () => {
    const parts = fc.integer({ min: 1, max: 31 });
    fc.assert(
      fc.property(parts, (offset) => {
        const text = `${String(offset / 64)} in`;
        const bearing = numberOf(`BEARING.SIZE(1in, ${text})`, 'in');
        const back = numberOf(`BEARING.OFFSET(1in, ${String(bearing)} in)`, 'in');
        expect(back).toBeCloseTo(offset / 64, 12);
      }),
    );
  });

  test('a template inside and one outside stand equally far from the size', () => {
    const inside = numberOf('BUSHING.TEMPLATE(6in, 3/4in, 1/2in, inside)', 'in');
    const outside = numberOf('BUSHING.TEMPLATE(6in, 3/4in, 1/2in, outside)', 'in');
    expect(inside).toBeCloseTo(6.25, 12);
    expect(outside).toBeCloseTo(5.75, 12);
  });

  test('a hole saw is never smaller than the hole', () => {
    expect(shown('HOLESAW.SIZE(1in)')).toBe('1 in');
    expect(shown('HOLESAW.SIZE(1.01in)')).toBe('1 1/16 in');
    expect(shown('HOLESAW.SIZE(2.01in)')).toBe('2 1/8 in');
    expect(shown('HOLESAW.SIZE(3.01in)')).toBe('3 1/4 in');
  });

  test('a grille that is not covered only keeps its clearance', () => {
    expect(shown('GRILLE.SIZE(8in, 1/16in, 1/16in, 0)')).toBe('7 7/8 in');
  });
});

describe('shape functions', () => {
  test.each([
    ['SHAPE.GROW(circle(8in), 1in)', 'circle(10 in)'],
    ['SHAPE.GROW(rect(8in, 6in), 1in)', 'roundrect(10 in, 8 in, 1 in)'],
    ['SHAPE.GROW(rect(8in, 6in), -1in)', 'rect(6 in, 4 in)'],
    ['SHAPE.GROW(roundrect(8in, 6in, 1in), -1/2in)', 'roundrect(7 in, 5 in, 1/2 in)'],
    ['SHAPE.GROW(roundrect(8in, 6in, 1in), -2in)', 'rect(4 in, 2 in)'],
    ['SHAPE.GROW(oval(8in, 6in), 0in)', 'oval(8 in, 6 in)'],
    ['SHAPE.GROW(oval(8in, 6in), 1in)', 'SHAPE.GROW(oval(8 in, 6 in), 1 in)'],
    ['SHAPE.GROW(rect(8in, 6in), 1in, square)', 'rect(10 in, 8 in)'],
  ])('%s is %s', (call, text) => {
    expect(shown(call)).toBe(text);
  });

  test.each([
    ['SHAPE.GROW(circle(2in), -1in)', 'there is no single outline'],
    ['SHAPE.GROW(rect(8in, 2in), -1in)', 'there is no single outline'],
    ['SHAPE.GROW(circle(2in))', 'SHAPE.GROW needs distance'],
    ['roundrect(8in, 6in, 4in)', 'at most 3 in fits'],
    ['circle(0in)', 'must be more than nothing'],
    ['rect(8in)', 'rect needs width'],
  ])('%s is refused with a reason', (call, reason) => {
    expect(shown(call)).toContain(reason);
  });

  test('a grown outline is longer by a full turn of its distance, as Steiner has it', () => {
    const sizes = fc.integer({ min: 4, max: 40 });
    fc.assert(
      fc.property(sizes, sizes, fc.integer({ min: 1, max: 20 }), (length, width, distance) => {
        const shape = `roundrect(${String(length)}in, ${String(width)}in, 1in)`;
        const grown = `SHAPE.GROW(${shape}, ${String(distance)}in)`;
        const before = numberOf(`SHAPE.PERIMETER(${shape})`, 'in');
        const after = numberOf(`SHAPE.PERIMETER(${grown})`, 'in');
        expect(after - before).toBeCloseTo(2 * Math.PI * distance, 8);
        const area = numberOf(`SHAPE.AREA(${shape})`, 'sqin');
        const more = before * distance + Math.PI * distance ** 2;
        expect(numberOf(`SHAPE.AREA(${grown})`, 'sqin')).toBeCloseTo(area + more, 6);
      }),
    );
  });
});
