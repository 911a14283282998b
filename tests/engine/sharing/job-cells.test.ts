import { describe, expect, test } from 'vitest';
import { jobCells } from '../../../extension/engine/sharing/job-cells.ts';
import { sample } from '../job/arbitrary-files.ts';

describe('jobCells', () => {
  test('a job is read as settings and as rows by id, each with its cells as they were typed', () => {
    const job = jobCells(sample);
    expect(job.settings.get('units')).toBe('in');
    const ring = job.tables.get('part')?.get('mid_ring#0');
    expect(ring?.cells.get('tilt')).toBe('15 deg');
    expect(ring?.cells.has('order')).toBe(false);
    expect(ring?.order).toBe(2000);
  });

  test('[J4] two rows of one id are both there', () => {
    const row = '[[part]]\nid = "base"\nname = ';
    const job = jobCells(`format = 1\n\n${row}"first"\n\n${row}"second"\n`);
    const rows = [...(job.tables.get('part') ?? [])];
    expect(rows.map(([key, { cells }]) => [key, cells.get('name')])).toEqual([
      ['base#0', 'first'],
      ['base#1', 'second'],
    ]);
  });
});
