import { describe, expect, test } from 'vitest';
import { doorSession } from '../../helpers/sample-session.ts';

describe('take', () => {
  const edited = (column: string, text: string, id = 'mid_ring') => {
    const session = doorSession();
    const before = session.snapshot();
    const planned = session.plan([{ kind: 'set-cell', row: { table: 'part', id }, column, text }]);
    if (!planned.ok) throw new Error(planned.problem.message);
    session.take(planned.value);
    return { before, after: session.snapshot() };
  };

  test('a note, of which nothing is calculated, leaves bill, work, price and checks as they are', () => {
    const { before, after } = edited('note', 'Check against the other door');
    expect(after.workbook.row('part', 'mid_ring')?.cell('note').text).toMatch(/^Check/);
    for (const part of ['bill', 'work', 'price', 'checks'] as const) {
      expect(after[part]).toBe(before[part]);
    }
  });

  test('a part without tax or markup moves the price, though all lines of the bill stay', () => {
    for (const column of ['taxed', 'marked_up']) {
      const { before, after } = edited(column, 'no', 'door_cover');
      expect(after.bill.lines).toEqual(before.bill.lines);
      expect(after.price.totals.total).toBeLessThan(before.price.totals.total);
    }
  });

  test('a tilt leaves what does not follow from it', () => {
    const { before, after } = edited('tilt', '18 deg');
    const lines = new Map(before.bill.lines.map((line) => [line.id, line]));
    const fresh = after.bill.lines.filter((line) => lines.get(line.id) !== line);
    expect(fresh.map(({ id }) => id)).toContain('poly_resin');
    expect(fresh.map(({ id }) => id)).not.toContain('brad_16');
    expect(fresh.length).toBeLessThan(before.bill.lines.length / 2);
  });
});
