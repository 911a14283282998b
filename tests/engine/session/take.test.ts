import { describe, expect, test } from 'vitest';
import type { Edit, Snapshot } from '../../../extension/engine/index.ts';
import { doorSession } from '../../helpers/sample-session.ts';
import { sourceText } from '../../helpers/source-files.ts';

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

  const asked = ({ heavy }: Snapshot): readonly string[] => heavy.map(({ key }) => key);

  test('nothing heavy is asked for a skin that cannot be found any more', () => {
    const session = doorSession(sourceText('sample-jobs/kick-panel-pair-mm.paneljob'));
    expect(asked(session.snapshot())).not.toEqual([]);
    const row = { table: 'driver', id: 'mid' };
    const planned = session.plan([{ kind: 'set-cell', row, column: 'depth', text: '=1 L' }]);
    if (!planned.ok) throw new Error(planned.problem.message);
    session.take(planned.value);
    expect(asked(session.snapshot())).toEqual([]);
  });

  test('what a branch asked is not asked once the other is taken', () => {
    const session = doorSession();
    for (const tilt of ['12 deg', '8 deg', '12 deg'])
      for (const [id, column, text] of [
        ['door_mat', 'use', '=IF(mid_ring.tilt > 10deg, 1 sqft, SKIN.AREA(door_base))'],
        ['mid_ring', 'tilt', tilt],
      ] as const) {
        const planned = session.plan([
          { kind: 'set-cell', row: { table: 'part', id }, column, text },
        ]);
        if (planned.ok) session.take(planned.value);
        const fresh = doorSession(session.snapshot().reading.text).snapshot();
        expect(asked(session.snapshot())).toEqual(asked(fresh));
      }
  });

  test('parts that call for work nobody plans are named in the order in which they stand', () => {
    const session = doorSession();
    const edits: readonly Edit[] = [
      { kind: 'delete-row', row: { table: 'task', id: 'door_cutting' } },
      { kind: 'move-row', row: { table: 'part', id: 'mid_baffle' }, after: null },
    ];
    for (const edit of edits) {
      const planned = session.plan([edit]);
      if (!planned.ok) throw new Error(planned.problem.message);
      session.take(planned.value);
    }
    const now = session.snapshot();
    const told = ({ problems }: Snapshot): readonly string[] =>
      problems.map(({ problem, line }) => `${String(line)} ${problem.message}`);
    expect(told(now).join('\n')).toContain('“Cut and rout”: Midbass baffle, Front door base, ');
    expect(told(now)).toEqual(told(doorSession(now.reading.text).snapshot()));
  });
});
