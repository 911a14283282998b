import { describe, expect, test } from 'vitest';
import { driverLine } from '../../../extension/engine/estimate/driver-line.ts';
import { fakeRow, inches, type FakeRow } from '../../helpers/fake-answers.ts';

const front = { row: fakeRow('part', { id: 'front' }), count: 2, words: '2 panels' };
const rear = { row: fakeRow('part', { id: 'rear' }), count: 1, words: '1 panel' };

function lineOf(cells: FakeRow, held = [front, rear]) {
  return driverLine(fakeRow('driver', { id: 'mid', name: 'Midbass', ...cells }), held, inches);
}

describe('driverLine', () => {
  test('three drivers sold by the pair are two pairs, one driver left over', () => {
    const { line, problems } = lineOf({ price: '149.00 USD', sold: 'pair' });
    expect([line.need?.base, line.buy, line.left?.base, line.leftValue]).toEqual([
      3, 29800, 1, 7450,
    ]);
    expect(line.packs.map(({ count, holds }) => [count, holds.unit])).toEqual([[2, 'pair']]);
    expect(line.rows.map(({ row, buy }) => [row, buy])).toEqual([
      ['front', 19867],
      ['rear', 9933],
    ]);
    expect(problems).toEqual([]);
  });

  test('drivers sold singly are bought as they are needed', () => {
    expect(lineOf({ price: '80 USD' }).line.buy).toBe(24000);
  });

  test('what the client brings or is in the car costs nothing and is listed', () => {
    for (const supply of ['client', 'in_car']) {
      const { line } = lineOf({ price: '80 USD', supply });
      expect([line.buy, line.need?.base, line.complete]).toEqual([0, 3, true]);
      expect(line.steps.at(-1)?.text).toMatch(/nothing to pay$/);
    }
  });

  test('a driver without a price leaves the total incomplete', () => {
    for (const price of ['', '3 in', '-80 USD', '?']) {
      const { line, problems } = lineOf({ price });
      expect([line.complete, line.buy]).toEqual([false, 0]);
      expect(problems.map(({ code, severity }) => [code, severity])).toEqual([
        ['driver-unpriced', 'warning'],
      ]);
    }
  });

  test('a driver that no baffle holds is not bought, and that is only a note', () => {
    const { line, problems } = lineOf({ price: '80 USD' }, []);
    expect([line.buy, line.complete, line.packs.length]).toEqual([0, true, 0]);
    expect(problems.map(({ code, severity }) => [code, severity])).toEqual([
      ['driver-unheld', 'note'],
    ]);
  });

  test('two rows of one id after a merge are two lines', () => {
    const again = driverLine(fakeRow('driver', { id: 'mid' }, 1), [], inches);
    expect(again.line.id).toBe('driver/mid#1');
  });
});
