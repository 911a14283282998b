import { describe, expect, test } from 'vitest';
import {
  billSheet,
  packsSheet,
  priceSheet,
  tasksSheet,
} from '../../../../extension/engine/export/xlsx/money-sheets.ts';
import type { Sheet } from '../../../../extension/engine/export/xlsx/sheet.ts';
import { charge, cost, pricedJob, row, task } from '../../../helpers/priced-job.ts';

const snapshot = pricedJob(
  row('material', 'resin', { name: 'Resin', form: 'liquid', density: '1 g/cm3' }),
  row('pack', 'resin_l', { material: 'resin', holds: '1 l', price: '12.50 USD' }),
  row('kind', 'goop', { name: 'Goop', table: 'part', group: 'skin', takes: 'amount' }),
  row('part', 'coat', { kind: 'goop', material: 'resin', use: '1500 ml' }),
  cost('goods', '100 USD'),
  task('hour', '90 min'),
  charge('hours', 'labour', { rate: '50 USD/h' }),
  charge('state', 'tax', { percent: '7.25 %' }),
);

function formulas({ rows }: Sheet): readonly string[] {
  return rows
    .flat()
    .flatMap((cell) => (cell !== undefined && 'number' in cell ? (cell.formula ?? []) : []));
}

describe('packsSheet', () => {
  test('two litres at 12.50 are count times price', () => {
    expect(formulas(packsSheet(snapshot))).toEqual(['ROUND(C2*D2,2)']);
  });
});

describe('billSheet', () => {
  test('what is bought is summed from the packs, and all lines are summed', () => {
    const found = formulas(billSheet(snapshot));
    expect(found.some((one) => one.startsWith('SUMIF(Packs!'))).toBe(true);
    expect(found.slice(-2)).toEqual(['SUM(E2:E3)', 'SUM(F2:F3)']);
  });
});

describe('tasksSheet', () => {
  test('hours are set-up and each times panels, times people, and their sum', () => {
    expect(formulas(tasksSheet(snapshot))).toEqual(['E2+F2*G2', 'I2*H2', 'SUM(J2:J2)']);
  });
});

describe('priceSheet', () => {
  test('labour is hours × rate, tax a share of its base, and the total their sum', () => {
    const found = formulas(priceSheet(snapshot));
    expect(found).toContain('Tasks!J3/60');
    expect(found.filter((one) => /^ROUND\(D\d\*E\d,2\)$/.test(one))).toHaveLength(2);
    expect(found.at(-1)).toMatch(/^SUM\(F2:F\d\)$/);
  });
});
