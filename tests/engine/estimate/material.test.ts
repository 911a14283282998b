import { describe, expect, test } from 'vitest';
import { readMaterial } from '../../../extension/engine/estimate/material.ts';
import { fakeRow, inches, millimetres, type FakeRow } from '../../helpers/fake-answers.ts';

function read(cells: FakeRow, packs: readonly FakeRow[] = [], settings = inches) {
  const rows = packs.map((pack, index) => fakeRow('pack', { id: `p${String(index)}`, ...pack }));
  return readMaterial(
    fakeRow('material', { id: 'it', ...cells }),
    { packs: rows, prices: [] },
    settings,
  );
}

describe('readMaterial', () => {
  test('the form settles what a material is measured in', () => {
    const measures = ['sheet', 'roll', 'strip', 'liquid', 'aerosol', 'piece'].map(
      (form) => read({ form }).measure,
    );
    expect(measures).toEqual(['area', 'length', 'length', 'volume', 'count', 'count']);
  });

  test('a liquid sold by the kilogram is measured by mass', () => {
    const resin = read({ form: 'liquid' }, [{ holds: '5 kg', price: '50 USD' }]);
    expect([resin.measure, resin.unit]).toEqual(['mass', 'kg']);
  });

  test('strips sold by the piece are counted unless their stock length is known', () => {
    const packs = [{ holds: '10 each', price: '5 USD' }];
    expect(read({ form: 'strip' }, packs).measure).toBe('count');
    expect(read({ form: 'strip', length: '36 in' }, packs).measure).toBe('length');
  });

  test('amounts are shown in the unit of the first pack', () => {
    expect(read({ form: 'liquid' }, [{ holds: '1 qt', price: '5 USD' }]).unit).toBe('qt');
    expect(read({ form: 'liquid' }).unit).toBe('floz');
    expect(read({ form: 'liquid' }, [], millimetres).unit).toBe('ml');
    expect(read({ form: 'roll' }, [{ step: '0.25 yd', rate: '9 USD/yd' }]).unit).toBe('yd');
    expect(read({ form: 'aerosol' }).unit).toBe('can');
    expect(read({ form: 'piece', unit: 'pair' }).unit).toBe('pair');
  });

  test('boards and cloth are charged by the pack, what stands on the shelf by use', () => {
    expect(read({ form: 'roll' }).charges).toBe('packs');
    expect(read({ form: 'liquid' }).charges).toBe('used');
    expect(read({ form: 'liquid', charge: 'packs' }).charges).toBe('packs');
  });

  test('nap or grain keeps blanks lengthways', () => {
    expect(read({ form: 'roll' }).turns).toBe(true);
    expect(read({ form: 'roll', nap: 'one_way' }).turns).toBe(false);
    expect(read({ form: 'sheet', grain: 'none' }).turns).toBe(true);
  });

  test('a pack that cannot be read is left out and told', () => {
    const glue = read({ form: 'liquid' }, [{ holds: '1 qt' }, { holds: '1 pt', price: '7 USD' }]);
    expect(glue.packs.map(({ id }) => id)).toEqual(['p1']);
    expect(glue.problems.map(({ place }) => place?.row)).toEqual(['p0']);
  });
});
