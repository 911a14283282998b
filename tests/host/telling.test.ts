import { afterEach, describe, expect, test, vi } from 'vitest';
import type { RowAddress } from '../../extension/protocol/messages.ts';
import { unpackRows } from '../../extension/protocol/packing.ts';
import { closeDesks, openDesk as open, sentOf, typed } from '../helpers/open-desk.ts';

// A real job is opened each time.
vi.setConfig({ testTimeout: 60_000 });

afterEach(closeDesks);

function typedRow(id: string): RowAddress {
  return { table: 'part', id, occurrence: 0 };
}

describe('Telling', () => {
  test('the rows typed into come with the totals, and all else that moved behind them', async () => {
    const { desk, panel } = await open();
    const rows = (packed = ''): readonly string[] => unpackRows(packed).map(({ id }) => id);
    await desk.edit(panel, 7, [typed('mid_ring', 'tilt', '20')]);
    await vi.waitFor(() => {
      expect(sentOf(panel, 'patch')).toHaveLength(2);
    });
    const [totals, rest] = sentOf(panel, 'patch');
    expect(totals).toMatchObject({ part: 'totals', headline: {}, cause: 7 });
    expect(totals?.bill).toBeUndefined();
    expect(rows(totals?.rows)).toEqual(['mid_ring']);
    expect(rest).toMatchObject({ part: 'rest', bill: {}, revision: totals?.revision });
    const figures = (patch = rest): readonly string[] | undefined =>
      patch?.headline?.figures.map(({ key }) => key);
    expect(figures(totals)).not.toContain('problems');
    expect(figures()).toEqual([...(figures(totals) ?? []), 'checks', 'problems']);
    expect(rows(rest?.rows)).toContain('mid_sticks');
    expect(rows(rest?.rows)).not.toContain('mid_ring');
    expect(rows(rest?.rows)).not.toContain('door_clips');
  });

  test('edits in quick succession have their totals each, and one message of all else', async () => {
    const { desk, panel } = await open();
    await desk.edit(panel, 1, [typed('mid_ring', 'tilt', '20')]);
    await desk.edit(panel, 2, [typed('gloves', 'qty', '12')]);
    await vi.waitFor(() => {
      expect(sentOf(panel, 'patch').at(-1)?.part).toBe('rest');
    });
    const patches = sentOf(panel, 'patch');
    expect(patches.map(({ cause, part }) => [cause, part])).toEqual([
      [1, 'totals'],
      [2, 'totals'],
      [undefined, 'rest'],
    ]);
    const ids = unpackRows(patches[2]?.rows ?? '').map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(['mid_ring', 'mid_sticks', 'gloves']));
  });

  test('problems are told with all else', async () => {
    const { desk, panel, on } = await open();
    const count = (): number => on.diagnostics.get(on.document.uri.toString())?.length ?? 0;
    const before = count();
    await desk.edit(panel, 1, [typed('mid_ring', 'depth', '=1 qt')]);
    await vi.waitFor(() => {
      expect(count()).toBeGreaterThan(before);
    });
    const [totals, rest] = sentOf(panel, 'patch');
    expect([totals?.problems, totals?.checks]).toEqual([undefined, undefined]);
    expect(rest?.problems).toBeDefined();
    // The row that was told with the totals is told again, now with what is wrong in it.
    expect(unpackRows(rest?.rows ?? '').map(({ id }) => id)).toContain('mid_ring');
  });

  test('a paste, a new row and a setting of the job are told whole', async () => {
    const { desk, panel } = await open();
    const names = ['mid_ring', 'mid_baffle', 'twt_ring', 'gloves'];
    await desk.edit(
      panel,
      1,
      names.map((id) => typed(id, 'note', 'look')),
    );
    await desk.edit(panel, 2, [typed('job', 'title', 'Doors', 'job')]);
    await desk.edit(panel, 3, [{ kind: 'duplicate', row: typedRow('gloves') }]);
    const told = sentOf(panel, 'patch').map(({ cause, part }) => [cause, part]);
    expect(told).toEqual([1, 2, 3].map((request) => [request, undefined]));
  });
});
