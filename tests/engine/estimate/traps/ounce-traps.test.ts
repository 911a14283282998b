import { describe, expect, test } from 'vitest';
import { doorPair, replaced } from '../../../helpers/sample-session.ts';
import { more, only, part, row, told } from '../../../helpers/told-traps.ts';

describe('bare oz for a liquid', () => {
  // 1 US fl oz of resin at 1.10 g/cm3 weighs 1.1475 oz: 12 oz of weight are 10.46 fl oz.
  test('is told as a weight, with what it is by volume and a way to say the other', () => {
    const found = only(
      replaced(doorPair, 'use = "12 floz"', 'use = "12 oz"').replace(
        'material = "acetone"',
        'material = "poly_resin"',
      ),
    );
    expect(found).toMatchObject({
      code: 'ounce-by-weight',
      severity: 'warning',
      at: 'part/solvent.use',
      fixes: ['12 floz'],
    });
    expect(found.message).toContain('10.46 floz');
    expect(found.line).toBeGreaterThan(0);
  });

  test('is told in a draw, in a formula and in a pack', () => {
    const drawn = part('more', {
      kind: 'ring',
      on: 'door_base',
      driver: 'mid',
      depth: '2 in',
      'draw.glue.use': '1 oz',
    });
    expect(told(more(drawn)).map(({ code, at }) => [code, at])).toEqual([
      ['ounce-by-weight', 'part/more.draw.glue.use'],
    ]);
    const reckoned = part('more', {
      kind: 'resin',
      on: 'door_skin',
      use: '=2*4oz',
      percent: '2 %',
    });
    expect(told(more(reckoned)).map(({ code }) => code)).toEqual(['ounce-by-weight']);
    const pack = row('pack', 'jug', { material: 'poly_resin', holds: '128 oz', price: '60 USD' });
    expect(told(more(pack)).map(({ at }) => at)).toEqual(['pack/jug.holds']);
  });

  test('a weight in grams, fluid ounces and oz by area are none', () => {
    for (const use of ['340 g', '12 floz', '12 fl oz', '0.75 lb']) {
      const coat = part('more', { kind: 'resin', on: 'door_skin', use, percent: '2 %' });
      expect(told(more(coat)), use).toEqual([]);
    }
  });
});

describe('oz by the square foot and by the square yard', () => {
  // NIST factors: 1.5 oz/ft² is 457.73 g/m², a ninth of it 50.86; 10 oz/yd² is 339.06 g/m².
  test('mat weighed by the square yard is told with both figures', () => {
    const mat = row('material', 'own_mat', {
      name: 'Chopped mat',
      form: 'roll',
      width: '38 in',
      weight: '1.5 oz/sqyd',
    });
    const found = only(more(mat));
    expect(found).toMatchObject({
      code: 'glass-by-yard',
      at: 'material/own_mat.weight',
      fixes: ['1.5 oz/sqft'],
    });
    expect(found.message).toContain('50.86 g/m2');
  });

  test('cloth weighed by the square foot is told', () => {
    const cloth = row('material', 'own_cloth', {
      name: 'Glass cloth',
      form: 'roll',
      width: '38 in',
      weight: '10 oz/sqft',
    });
    expect(only(more(cloth))).toMatchObject({ code: 'glass-by-foot', fixes: ['10 oz/sqyd'] });
  });

  test('a row of mat lighter than any mat is told, whatever unit it is in', () => {
    const veil = row('material', 'veil', {
      name: 'Glass veil',
      form: 'roll',
      width: '38 in',
      weight: '51 g/m2',
    });
    const rows = `${veil}\n${part('back', { kind: 'mat', on: 'door_skin', material: 'veil' })}`;
    expect(told(more(rows)).map(({ code, at }) => [code, at])).toEqual([
      ['glass-too-light', 'part/back.material'],
    ]);
  });

  test('a literal of the wrong area in RESIN.GLASS is told', () => {
    const use = '=RESIN.GLASS(on.area, 1.5oz/sqyd, 2, book.mat_ratio)';
    const coat = part('wet', { kind: 'resin', on: 'door_skin', use, percent: '2 %' });
    expect(only(more(coat))).toMatchObject({ code: 'glass-unit-in-formula', at: 'part/wet.use' });
    expect(told(more(coat.replace('1.5oz/sqyd', '1.5oz/sqft')))).toEqual([]);
    expect(told(more(coat.replace('1.5oz/sqyd', '10oz/sqyd')))).toEqual([]);
  });
});
