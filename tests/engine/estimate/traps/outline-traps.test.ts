import { describe, expect, test } from 'vitest';
import { more, only, part, told } from '../../../helpers/told-traps.ts';

function base(shape: string): string {
  return more(part('odd', { kind: 'base', panel: 'door', shape }));
}

// The corner at (12 in, 8 in) turns inwards.
const hollow =
  'polygon(0 in, 0 in, 24 in, 0 in, 24 in, 8 in, 12 in, 8 in, 12 in, 14 in, 0 in, 14 in)';

describe('an outline that the shop’s bit cannot follow', () => {
  test('a sharp corner inwards is told with its place and what the bit leaves', () => {
    const found = only(base(hollow));
    expect(found).toMatchObject({
      code: 'hollow-too-tight',
      severity: 'note',
      at: 'part/odd.shape',
    });
    // Half of a 1/2 in bit.
    expect(found.message).toContain(
      'a sharp corner at (12 in, 8 in); a flush bit of 1/2 in with its bearing leaves 1/4 in there',
    );
  });

  test('plain outlines and outlines that bulge only have no hollow', () => {
    expect(told(base('roundrect(24 in, 14 in, 2 in)'))).toEqual([]);
    expect(told(base('polygon(0 in, 0 in, 24 in, 0 in, 12 in, 14 in)'))).toEqual([]);
  });

  test('a hollow eased to the bit’s radius is followed, a tighter one is not', () => {
    const grown = (by: string): string => base(`=SHAPE.GROW(SHAPE.GROW(${hollow}, ${by}), -${by})`);
    expect(told(grown('3/8 in'))).toEqual([]);
    expect(only(grown('1/8 in')).message).toContain('a radius of 1/8 in');
  });
});
