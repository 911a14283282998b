import { describe, expect, test } from 'vitest';
import { makeBill } from '../../../extension/engine/estimate/estimate.ts';
import { billCsv } from '../../../extension/engine/export/csv.ts';
import { fakeAnswers, fakeBook, inches, type FakeJob } from '../../helpers/fake-answers.ts';
import { paperJob } from '../../helpers/paper-job.ts';

function csvOf(job: FakeJob): string {
  return billCsv(makeBill(fakeAnswers(job), fakeBook, inches), inches);
}

/** A reader of RFC 4180 that shares nothing with the writer. */
function cellsOf(csv: string): string[][] {
  const cells: string[][] = [['']];
  let quoted = false;
  for (const sign of csv.slice(0, -2)) {
    const row = cells.at(-1) ?? [];
    if (sign === '"') quoted = !quoted;
    if (sign === '\n' && !quoted) cells.push(['']);
    else if (sign === ',' && !quoted) row.push('');
    else if (sign !== '\r') row.push(`${row.pop() ?? ''}${sign}`);
  }
  return cells.map((row) =>
    row.map((cell) => (cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"') : cell)),
  );
}

describe('billCsv', () => {
  test('every line has a number and a unit for what is needed, and the total stands last', () => {
    const [header, ...rows] = cellsOf(csvOf(paperJob));
    expect(header?.slice(0, 5)).toEqual(['Group', 'Id', 'Name', 'Need', 'Need unit']);
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([header?.length]));
    const vinyl = rows.find((row) => row[1] === 'vinyl_54');
    expect(vinyl).toEqual([
      'Finish',
      'vinyl_54',
      'vinyl_54',
      '0.875',
      'yd',
      '1 yd',
      '28.00',
      '28.00',
      '0.125',
      'yd',
      '3.50',
      'USD',
      'packs',
      '',
      'yes',
    ]);
    const total = rows.at(-1);
    const sum = rows.slice(0, -1).reduce((all, row) => all + Math.round(Number(row[6]) * 100), 0);
    expect(total?.[0]).toBe('Total');
    expect(Math.round(Number(total?.[6]) * 100)).toBe(sum);
  });

  test('a total that lacks a price says so', () => {
    const rest = (paperJob['pack'] ?? []).filter((pack) => pack['material'] !== 'mekp');
    const total = cellsOf(csvOf({ ...paperJob, pack: rest })).at(-1);
    expect(total?.slice(-2)).toEqual(['1 line incomplete', 'no']);
  });

  test.each(['=HYPERLINK("x")', '+1', '-2', '@SUM(A1)'])(
    'a name such as %s is a text to a spreadsheet',
    (name) => {
      const materials = [{ id: 'odd', name, form: 'piece' }];
      const parts = [{ id: 'part', kind: 'consumable', material: 'odd', qty: '2' }];
      const [, row] = cellsOf(csvOf({ material: materials, part: parts }));
      expect(row?.[2]).toBe(`'${name}`);
    },
  );

  test('a name with commas and quotes comes back as it was', () => {
    const materials = [{ id: 'odd', name: 'Vinyl, "soft", 54 in', form: 'piece' }];
    const parts = [{ id: 'part', kind: 'consumable', material: 'odd', qty: '2' }];
    const [, row] = cellsOf(csvOf({ material: materials, part: parts }));
    expect(row?.[2]).toBe('Vinyl, "soft", 54 in');
  });
});
