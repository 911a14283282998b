import { describe, expect, test } from 'vitest';
import { more, only, part, row, told } from '../../../helpers/told-traps.ts';

describe('percent by mass against by volume', () => {
  // Resin makers' tip: a 0.80 g/ml putty dosed by volume at 1.12 g/ml is 40 % out.
  test('is told where the densities are more than a tenth apart', () => {
    const light = row('material', 'putty', {
      name: 'Light putty',
      form: 'liquid',
      density: '0.8 g/cm3',
    });
    const pack = row('pack', 'tub', { material: 'putty', holds: '1 qt', price: '20 USD' });
    const coat = part('thick', {
      kind: 'resin',
      on: 'door_skin',
      material: 'putty',
      percent: '2 %',
    });
    const found = only(more(`${light}\n${pack}\n${coat}`));
    expect(found).toMatchObject({
      code: 'mix-by-mass-or-volume',
      severity: 'note',
      at: 'part/thick.percent',
    });
    expect(found.message).toContain('a percent by volume is 40 % more than one by mass');
  });

  test('a formula that takes another custom than the book is told, with how far they part', () => {
    const use =
      '=MIX.QUANTITY(use*(1 + waste), percent, ml_per_100g, material.density, draw.catalyst.material.density)';
    const coat = part('own', {
      kind: 'resin',
      on: 'door_skin',
      percent: '2 %',
      'draw.catalyst.use': use,
    });
    const found = only(more(coat));
    expect(found).toMatchObject({ code: 'mix-basis-differs', at: 'part/own.draw.catalyst.use' });
    // 1 ml for 100 g of a 1.12 g/ml catalyst is 1.12 %.
    expect(found.message).toContain('12 %');
    expect(told(more(coat.replace('ml_per_100g', 'by_mass')))).toEqual([]);
  });
});

describe('drops', () => {
  // USP <1101>: a drop of water 45 to 55 mg; 35 drops that fill 2 ml are 0.0571 ml each.
  test('of the book’s example are told until somebody counted', () => {
    const count = row('measure', 'drops', { value: '=MIX.DROPS(2ml, book.catalyst_drop)' });
    const found = only(more(count));
    expect(found).toMatchObject({ code: 'drop-not-calibrated', at: 'measure/drops.value' });
    expect(found.message).toContain('0.05 ml');
    const own = row('constant', 'catalyst_drop', {
      value: '0.0571 ml',
      source: 'counted: 35 drops fill 2 ml',
    });
    expect(told(more(`${count}\n${own}`))).toEqual([]);
  });

  test('of 0.05 ml written out are told too; a counted drop is not', () => {
    expect(only(more(row('measure', 'drops', { value: '=MIX.DROPS(2ml, 0.05ml)' }))).code).toBe(
      'drop-not-calibrated',
    );
    expect(told(more(row('measure', 'drops', { value: '=MIX.DROPS(2ml, 2ml/35)' })))).toEqual([]);
  });
});
