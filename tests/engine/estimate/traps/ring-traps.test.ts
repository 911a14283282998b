import { describe, expect, test } from 'vitest';
import { doorPair, replaced } from '../../../helpers/sample-session.ts';
import { more, part, told } from '../../../helpers/told-traps.ts';

describe('a tilted ring of the wrong build', () => {
  const seven = {
    kind: 'ring',
    on: 'door_base',
    driver: 'mid',
    size: '7 in',
    depth: '2 1/2 in',
    tilt: '15 deg',
  };

  // Geometry: 7 in at 15°, round baffle: outline 21.6181 in, against 21.9911 in of the circle.
  test('a bent ring built like a tube does not take a round baffle, and its strip is longer', () => {
    const found = told(more(part('odd', { ...seven, build: 'round_tube' }))).filter(
      ({ at }) => at === 'part/odd.build',
    );
    expect(found.map(({ code }) => code)).toEqual(['ring-build-unfit']);
    // 21.9911 − 21.6181 = 0.3730 in.
    expect(found[0]?.message).toContain('the strip is then 3/8 in shorter');
    expect(found[0]?.message).toContain('7 1/4 in × 7 in');
  });

  test('a wall square to the face is told as a note', () => {
    const found = told(more(part('odd', { ...seven, build: 'square_wall' }))).filter(
      ({ at }) => at === 'part/odd.build',
    );
    expect(found.map(({ code, severity }) => [code, severity])).toEqual([
      ['ring-build-wall', 'note'],
    ]);
  });

  // The same ring: rise D·tan a = 1.8756 in for a tube, D·sin a = 1.8117 in for a round baffle.
  test('a tube reckoned as a round baffle is told with both rises', () => {
    const stack = part('odd', { ...seven, kind: 'stacked_ring', build: 'round_baffle' });
    const found = told(more(stack)).filter(({ at }) => at === 'part/odd.build');
    expect(found.map(({ code }) => code)).toEqual(['tube-build-unfit']);
    expect(found[0]?.message).toMatch(/1 13\/16 in where it is ≈? ?1 7\/8 in/);
  });

  test('a round baffle in the oval mouth of a tube is told', () => {
    const baffle = replaced(
      doorPair,
      'on = "twt_ring"\ndriver = "twt"\n',
      'on = "twt_ring"\ndriver = "twt"\n\nshape = "circle(3 in)"\n',
    );
    expect(told(baffle).map(({ code, at }) => [code, at])).toEqual([
      ['baffle-round-in-oval', 'part/twt_baffle.shape'],
    ]);
  });

  test('a seam in the corner of a ring with round corners is told, one on its side is not', () => {
    // 8 in × 6 in with corners of 1 1/2 in: straight up its sides are straight; at 40° from there a corner
    // begins (atan(2.5 in ÷ 3 in) = 39.8°).
    const shaped = (seam: string): string =>
      more(
        part('odd', {
          ...seven,
          shape: 'roundrect(8 in, 6 in, 1 1/2 in)',
          turn: '90 deg',
          tilt: '0 deg',
          seam,
        }),
      );
    const found = told(shaped('45 deg')).filter(({ at }) => at === 'part/odd.seam');
    expect(found.map(({ code }) => code)).toEqual(['ring-seam-corner']);
    expect(found[0]?.message).toContain(
      '45 deg from straight up, falls in a corner of roundrect(8 in, 6 in, 1 1/2 in)',
    );
    expect(told(shaped('0 deg')).filter(({ at }) => at === 'part/odd.seam')).toEqual([]);
    expect(told(shaped('30 deg')).filter(({ at }) => at === 'part/odd.seam')).toEqual([]);
  });

  test('upright rings of any build are none', () => {
    expect(told(more(part('odd', { ...seven, build: 'round_tube', tilt: '0 deg' })))).toEqual([]);
  });
});
