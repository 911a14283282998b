import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Bill } from '../../../extension/engine/estimate/bill.ts';
import { makeBill, openEstimate } from '../../../extension/engine/estimate/estimate.ts';
import { showQuantity } from '../../../extension/engine/units/show.ts';
import {
  answersOver,
  fakeAnswers,
  fakeBook,
  fakeRow,
  fakeTables,
  inches,
  type FakeJob,
} from '../../helpers/fake-answers.ts';
import { paperJob } from '../../helpers/paper-job.ts';

function lineOf(bill: Bill, id: string) {
  const line = bill.lines.find((candidate) => candidate.id === id);
  if (line === undefined) throw new Error(`no line ${id}`);
  return line;
}

describe('openEstimate', () => {
  const estimate = openEstimate();
  const tables = fakeTables(paperJob);
  const first = estimate.update(answersOver(tables), fakeBook, inches);

  test('the same answers give the same bill', () => {
    expect(estimate.update(answersOver(new Map(tables)), fakeBook, inches)).toBe(first);
  });

  test('an edit of one row leaves the other lines as they were', () => {
    const parts = (tables.get('part') ?? []).map((row) =>
      row.id === 'grit'
        ? fakeRow('part', { id: 'grit', kind: 'consumable', material: 'disc_6', qty: '9' })
        : row,
    );
    const next = estimate.update(
      answersOver(new Map([...tables, ['part', parts]])),
      fakeBook,
      inches,
    );
    const fresh = next.lines.filter((line) => !first.lines.includes(line)).map(({ id }) => id);
    expect(fresh).toEqual(['disc_6']);
    expect(lineOf(next, 'disc_6').need?.base).toBe(9);
    estimate.update(answersOver(tables), fakeBook, inches);
  });

  const edits = fc.array(
    fc.oneof(
      fc.record({
        table: fc.constant('part'),
        index: fc.nat(24),
        column: fc.constantFrom('qty', 'material', 'on', 'panel', 'price', 'hand', 'use'),
        text: fc.constantFrom(
          '',
          '3',
          '-1',
          'none',
          'mdf_12',
          'wire_16',
          'base',
          'skin',
          'door',
          '4 USD',
          'left',
          '5 in',
          '?',
        ),
      }),
      fc.record({
        table: fc.constantFrom('material', 'pack'),
        index: fc.nat(21),
        column: fc.constantFrom('waste', 'density', 'price', 'holds', 'width', 'material'),
        text: fc.constantFrom('', '20 %', '1 g/cm3', '3 USD', '2 qt', '40 in', 'mdf_6', '?'),
      }),
      fc.record({
        table: fc.constantFrom('panel', 'driver'),
        index: fc.nat(1),
        column: fc.constantFrom('count', 'hands', 'price', 'supply', 'sold'),
        text: fc.constantFrom('', '2', 'left', 'client', 'pair', '10 USD'),
      }),
    ),
    { minLength: 1, maxLength: 8 },
  );

  test('edit after edit gives the bill that a fresh start gives', () => {
    fc.assert(
      fc.property(edits, (list) => {
        const kept = openEstimate();
        let job: FakeJob = paperJob;
        let rows = fakeTables(job);
        kept.update(answersOver(rows), fakeBook, inches);
        for (const { table, index, column, text } of list) {
          const source = job[table]?.[index];
          if (source === undefined) continue;
          const cells = { ...source, [column]: text };
          job = { ...job, [table]: (job[table] ?? []).with(index, cells) };
          rows = new Map([
            ...rows,
            [table, (rows.get(table) ?? []).with(index, fakeRow(table, cells))],
          ]);
          const now = kept.update(answersOver(rows), fakeBook, inches);
          expect(now).toEqual(makeBill(answersOver(rows), fakeBook, inches));
        }
      }),
      { numRuns: 150 },
    );
  });

  test('whatever the rows say, the bill adds up and nothing is negative', () => {
    fc.assert(
      fc.property(edits, (list) => {
        let job: FakeJob = paperJob;
        for (const { table, index, column, text } of list) {
          const source = job[table]?.[index];
          if (source === undefined) continue;
          job = { ...job, [table]: (job[table] ?? []).with(index, { ...source, [column]: text }) };
        }
        const bill = makeBill(fakeAnswers(job), fakeBook, inches);
        for (const line of bill.lines) {
          expect(Number.isInteger(line.buy) && line.buy >= 0).toBe(true);
          expect(Number.isInteger(line.charge) && line.charge >= 0 && line.charge <= line.buy).toBe(
            true,
          );
          expect(line.rows.reduce((sum, { charge }) => sum + charge, 0)).toBe(
            line.rows.length > 0 ? line.charge : 0,
          );
        }
        expect(bill.totals.complete).toBe(bill.totals.incomplete === 0);
      }),
      { numRuns: 150 },
    );
  });

  test('amounts are shown as they are needed', () => {
    const need = lineOf(first, 'fleece').need;
    expect(need && showQuantity(need, inches, need.unit).text).toBe('0.8472 yd');
  });
});
