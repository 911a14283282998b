import { describe, expect, test } from 'vitest';
import type { Bill } from '../../../extension/engine/estimate/bill.ts';
import { makeBill } from '../../../extension/engine/estimate/estimate.ts';
import {
  fakeAnswers,
  fakeBook,
  inches,
  millimetres,
  type FakeJob,
} from '../../helpers/fake-answers.ts';
import { paperJob } from '../../helpers/paper-job.ts';

const gallon = 231 * 25.4 ** 3;
const inBase = new Map([
  ['sqft', 304.8 ** 2],
  ['ft', 304.8],
  ['in', 25.4],
  ['yd', 914.4],
  ['floz', gallon / 128],
  ['qt', gallon / 4],
]);

function billOf(job: FakeJob, settings = inches): Bill {
  return makeBill(fakeAnswers(job), fakeBook, settings);
}

function changed(table: string, id: string, cells: Readonly<Record<string, string>>): FakeJob {
  const rows = paperJob[table] ?? [];
  return {
    ...paperJob,
    [table]: rows.map((row) => (row['id'] === id ? { ...row, ...cells } : row)),
  };
}

function lineOf(bill: Bill, id: string) {
  const line = bill.lines.find((candidate) => candidate.id === id);
  if (line === undefined) throw new Error(`no line ${id}`);
  return line;
}

// Worked by hand for the pair: need with waste, packs at least cost, value of what is used.
const worked: readonly (readonly [
  id: string,
  need: number,
  unit: string,
  buy: number,
  used: number,
])[] = [
  ['hardboard_6', 5.958, 'sqft', 14, 5.21],
  ['mdf_12', 1.061, 'sqft', 13.5, 1.79],
  ['mdf_6', 0.975, 'sqft', 9.5, 1.16],
  ['panelboard_3', 1.077, 'sqft', 18, 1.82],
  ['tube_89', 0.323, 'ft', 4.5, 1.46],
  ['dowel_6', 11, 'in', 1.2, 0.37],
  ['pva_glue', 4, 'floz', 4.5, 2.25],
  ['fleece', 0.847, 'yd', 9.5, 8.05],
  ['mekp', 1.259, 'floz', 6, 3.78],
  ['mat_34', 1.296, 'yd', 9.6, 6.22],
  ['light_filler', 0.522, 'qt', 21, 10.95],
  ['disc_6', 12, 'each', 22, 10.56],
  ['sealer', 4.746, 'floz', 8.5, 5.04],
  ['vinyl_54', 0.875, 'yd', 28, 24.5],
  ['contact', 6.152 / 16, 'pt', 13, 5],
  ['speaker_cloth', 0.292, 'yd', 5.5, 3.21],
  ['staple_8', 404.8, 'each', 12, 0.97],
  ['magnet_10', 16, 'each', 12, 9.6],
  ['gasket_tape', 37.11 / 12, 'ft', 8, 2.47],
  ['satin_black', 0.3, 'can', 9, 2.7],
  ['glove', 10, 'pair', 19, 3.8],
  ['wire_16', 22, 'ft', 9.9, 9.9],
];

describe('assembleBill', () => {
  const bill = billOf(paperJob);

  test.each(worked)('the pair needs %s as worked by hand', (...row) => {
    const [id, need, unit, buy, used] = row;
    const line = lineOf(bill, id);
    const factor = unit === 'pt' ? gallon / 8 : (inBase.get(unit) ?? 1);
    expect((line.need?.base ?? 0) / factor).toBeCloseTo(need, 2);
    expect(line.need?.unit).toBe(unit);
    expect(line.buy).toBe(Math.round(buy * 100));
    // Two decimals of the worked need leave a few cents of doubt in the value used.
    expect(Math.abs(line.buy - line.leftValue - used * 100)).toBeLessThanOrEqual(3);
    expect(line.charge).toBe(line.charges === 'packs' ? line.buy : line.buy - line.leftValue);
  });

  test('the pair takes 2.003 quarts of resin: two quarts, told as tight', () => {
    const line = lineOf(bill, 'poly_resin');
    expect(line.packs.map(({ count, holds }) => [count, holds.unit])).toEqual([[2, 'qt']]);
    expect([line.buy, line.charge]).toEqual([4800, 4800]);
    expect(line.tight).toBe('tight, 0.1 % short');
  });

  test('boards and cloth are charged as bought, glue and staples as used', () => {
    expect(lineOf(bill, 'vinyl_54').charges).toBe('packs');
    expect(lineOf(bill, 'hardboard_6').charges).toBe('packs');
    expect(lineOf(bill, 'staple_8').charges).toBe('used');
    expect(lineOf(bill, 'staple_8').charge).toBe(97);
  });

  test('only a layout that could be bettered is approximate', () => {
    expect(['fleece', 'mdf_12', 'mekp'].map((id) => lineOf(bill, id).approximate)).toEqual([
      true,
      false,
      false,
    ]);
    expect(lineOf(bill, 'mdf_12').laid?.answer.proven).toBe(true);
    expect(bill.waits.map(({ about }) => about)).toContain('layout fleece');
  });

  test('freight is paid once for the job', () => {
    expect(lineOf(bill, 'part/freight').buy).toBe(1850);
  });

  test('a pair of drivers is one pair', () => {
    expect(lineOf(bill, 'driver/mid').buy).toBe(14900);
    expect(lineOf(bill, 'driver/mid').need?.base).toBe(2);
  });

  test('groups stand in bench order and add up to the totals', () => {
    expect(bill.groups.map(({ group }) => group)).toEqual([
      'structure',
      'skin',
      'finish',
      'drivers',
      'shop',
    ]);
    const sum = bill.lines.reduce((total, { buy }) => total + buy, 0);
    expect(bill.groups.reduce((total, { buy }) => total + buy, 0)).toBe(sum);
    expect(bill.totals).toEqual({
      buy: sum,
      charge: bill.lines.reduce((total, { charge }) => total + charge, 0),
      incomplete: 0,
      complete: true,
      panels: 2,
    });
    expect(bill.problems).toEqual([]);
  });

  test('the shares of the rows add up to every line', () => {
    for (const line of bill.lines) {
      expect(line.rows.reduce((sum, { buy }) => sum + buy, 0)).toBe(line.buy);
      expect(line.rows.reduce((sum, { charge }) => sum + charge, 0)).toBe(line.charge);
    }
  });

  test('every line tells where its figures are from', () => {
    const steps = lineOf(bill, 'sealer').steps.map(({ text }) => text);
    expect(steps).toEqual([
      'needed: 4.745 floz',
      '1 × 8 floz at 8.50 USD',
      'bought: 8 floz for 8.50 USD',
      'charged: what is used, 5.04 USD',
    ]);
    expect(lineOf(bill, 'sealer').rows[0]?.steps.map(({ text }) => text)).toEqual([
      'back_paint: one piece takes 406.2 sqin',
      '× 2 pieces',
      '× 2 panels',
      '+ 15 % waste',
      '= 1869 sqin',
      'by the coverage 350 sqft/gal of sealer: 4.745 floz',
    ]);
    expect(lineOf(bill, 'vinyl_54').steps.map(({ text }) => text)).toContain(
      '2 of 31 1/2 in × 20 1/2 in',
    );
  });

  test('two pairs need twice as much, but for what is per job', () => {
    const two = billOf(changed('panel', 'door', { count: '2' }));
    for (const line of two.lines) {
      const one = lineOf(bill, line.id);
      const factor = ['glove', 'part/freight'].includes(line.id) ? 1 : 2;
      // Cloth is laid anew: two layouts beside each other may take less.
      if (line.laid?.answer.kind === 'bolt' && line.need?.dimension.length === 1) continue;
      expect(line.need?.base).toBeCloseTo((one.need?.base ?? 0) * factor, 6);
    }
    expect(two.totals.panels).toBe(4);
  });

  test('a part for the left hand is made once for a pair', () => {
    const left = billOf(changed('part', 'magnets', { hand: 'left' }));
    expect(lineOf(left, 'magnet_10').need?.base).toBe(8);
  });

  test('money does not depend on the units the job is shown in', () => {
    const metric = billOf(paperJob, millimetres);
    expect(metric.lines.map(({ id, buy, charge }) => [id, buy, charge])).toEqual(
      bill.lines.map(({ id, buy, charge }) => [id, buy, charge]),
    );
  });

  test('one missing price leaves the rest standing and the total incomplete', () => {
    const rest = (paperJob['pack'] ?? []).filter((pack) => pack['material'] !== 'mekp');
    const open = billOf({ ...paperJob, pack: rest });
    expect(open.totals.incomplete).toBe(1);
    expect(open.totals.complete).toBe(false);
    expect(open.totals.buy).toBe(bill.totals.buy - 600);
    expect(open.problems.map(({ code, place }) => [code, place?.row])).toEqual([
      ['material-unsold', 'mat_back'],
    ]);
  });

  test('resin without a density says what it is needed for', () => {
    const open = billOf(changed('material', 'poly_resin', { density: '' }));
    expect(open.problems[0]?.message).toBe(
      'poly_resin has no density; needed to buy 1144 g by the quart.',
    );
    expect(open.problems[0]?.place?.row).toBe('soak');
    expect(lineOf(open, 'poly_resin').complete).toBe(false);
  });
});
