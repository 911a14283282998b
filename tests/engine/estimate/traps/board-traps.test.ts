import { describe, expect, test } from 'vitest';
import { more, only, part, row, told } from '../../../helpers/told-traps.ts';

describe('nominal board thickness', () => {
  const mdf = row('material', 'mdf_12', { thickness: '12 mm' });

  // ANSI A208.2: ± 0.005 in; 1/2 in is 12.7 mm.
  test('a part that says 1/2 in of a board that measures 12 mm is told', () => {
    const text = more(
      `${mdf}\n${part('plate', { kind: 'bezel', on: 'mid_baffle', driver: 'mid', material: 'mdf_12', thickness: '1/2 in' })}`,
    );
    const found = only(text);
    expect(found).toMatchObject({ code: 'board-nominal', at: 'part/plate.thickness' });
    expect(found.message).toContain('measures 12 mm');
  });

  test('a board called by its metric name but given as the fraction is told', () => {
    const board = row('material', 'own_ply', {
      name: 'Birch, 18 mm',
      form: 'sheet',
      thickness: '3/4 in',
    });
    const found = only(more(board));
    // 18 mm is sold as 3/4 in, 19.05 mm.
    expect(found).toMatchObject({ code: 'board-name-differs', at: 'material/own_ply.thickness' });
    expect(found.message).toContain('1.05 mm apart');
  });

  test('plywood of an exact fraction is told; 23/32 in is not', () => {
    const ply = (thickness: string): string =>
      more(row('material', 'own_ply', { name: 'Plywood', form: 'sheet', thickness }));
    expect(only(ply('3/4 in')).code).toBe('plywood-nominal');
    expect(told(ply('23/32 in'))).toEqual([]);
  });
});

describe('an area where a blank is meant', () => {
  // Upholstery yardage: 1 yd of 54 in goods is 13.5 sq ft.
  test('cloth asked for by area is told with the length it would be', () => {
    const lining = part('lining', {
      kind: 'consumable',
      on: 'door_base',
      material: 'vinyl_54',
      use: '13.5 sqft',
    });
    const found = only(more(lining));
    expect(found).toMatchObject({
      code: 'area-not-blank',
      severity: 'warning',
      at: 'part/lining.use',
    });
    expect(found.message).toContain('36 in of it only if');
  });

  test('a length of it, and mat by the area, are none', () => {
    expect(
      told(
        more(
          part('lining', {
            kind: 'consumable',
            on: 'door_base',
            material: 'vinyl_54',
            use: '1 yd',
          }),
        ),
      ),
    ).toEqual([]);
    expect(told(more(part('back', { kind: 'mat', on: 'door_skin', use: '4 sqft' })))).toEqual([]);
  });
});
