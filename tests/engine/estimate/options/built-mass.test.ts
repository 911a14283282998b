import { describe, expect, test } from 'vitest';
import { builtMass } from '../../../../extension/engine/estimate/options/built-mass.ts';
import { jobWith, row } from '../../../helpers/priced-job.ts';

const board = row('material', 'board', {
  name: 'Board',
  form: 'sheet',
  length: '1000 mm',
  width: '1000 mm',
  thickness: '10 mm',
  density: '0.7 g/cm3',
});

describe('builtMass', () => {
  test('two boards of 500 × 400 × 10 mm at 0.7 g/cm3 weigh 2800 g', () => {
    const panel = row('panel', 'door', { name: 'Door', hands: 'pair' });
    const base = row('part', 'base', {
      kind: 'base',
      panel: 'door',
      material: 'board',
      length: '500 mm',
      width: '400 mm',
      waste: '50 %',
    });
    const { bill, workbook, settings } = jobWith({ units: 'mm' }, board, panel, base);
    const { grams } = builtMass(
      { ...bill, lines: bill.lines.filter(({ id }) => id === 'board') },
      workbook,
      settings,
    );
    expect(grams).toBeCloseTo(2800, 6);
  });

  test('goods that are counted have no mass and are named', () => {
    const kind = row('kind', 'bolt', {
      name: 'Bolt',
      table: 'part',
      group: 'drivers',
      takes: 'amount',
    });
    const goods = row('material', 'clip', { name: 'Clip', form: 'piece' });
    const part = row('part', 'clips', { kind: 'bolt', material: 'clip', use: '1' });
    const { bill, workbook, settings } = jobWith({}, goods, kind, part);
    expect(builtMass(bill, workbook, settings)).toEqual({ grams: 0, unknown: ['Clip'] });
  });
});
