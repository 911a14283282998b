import { describe, expect, test } from 'vitest';
import { openSession, readFile } from '../../../extension/engine/index.ts';
import { jobView, tableRows } from '../../../extension/host/views/job-view.ts';
import { previewOf } from '../../../extension/host/views/preview.ts';
import { sheetContext } from '../../../extension/host/views/sheet-context.ts';
import { largeJob } from '../../bench/large-job.ts';
import { sourceText } from '../../helpers/source-files.ts';

const samples = ['front-door-pair', 'kick-panel-pair-mm', 'five-panel-sedan'] as const;
const readSample = (path: string): string => sourceText(`sample-jobs/${path}`);
const book = readSample('books/demo-shop.panelbook');

describe('previewOf', () => {
  test.each(samples)('%s has its rows where they will stand with their answers', (name) => {
    const text = readSample(`${name}.paneljob`);
    const preview = previewOf(readFile(text));
    const snapshot = openSession(text, book).snapshot();
    const context = sheetContext(snapshot);
    const job = jobView({ context, baseline: snapshot, knobs: [], lock: undefined });
    const laid = (view: typeof job | undefined): unknown =>
      view?.sheets
        // Constants of a job stand in the order of the book that they are laid over.
        .filter(({ table }) => table !== 'constant')
        .map(({ table, columns, order }) => ({ table, columns, order }));
    expect(laid(preview?.job)).toEqual(laid(job));
    for (const [table, rows] of preview?.rows ?? []) {
      if (table === 'job' || table === 'constant') continue;
      const answered = tableRows(table, context);
      expect(rows.map(({ id, group }) => [id, group])).toEqual(
        answered.map(({ id, group }) => [id, group]),
      );
    }
  });

  test('what is typed is shown as it is typed, and what is worked out waits', () => {
    const preview = previewOf(readFile(readSample('front-door-pair.paneljob')));
    const columns = preview?.job.sheets.find(({ table }) => table === 'part')?.columns ?? [];
    const ring = preview?.rows.get('part')?.find(({ id }) => id === 'mid_ring');
    const cell = (key: string): unknown =>
      ring?.cells[columns.findIndex((column) => column.key === key)];
    expect(cell('kind')).toMatchObject({ shown: 'Bent ring', typed: 'ring', look: 'typed' });
    expect(cell('tilt')).toMatchObject({ shown: '15 deg', look: 'typed' });
    expect(cell('charge')).toMatchObject({ shown: '', look: 'waiting' });
    expect(preview?.job.state).toBe('calculating');
  });

  test('a file that cannot be shown has none', () => {
    expect(previewOf(readFile('format = 1\n<<<<<<< ours\n[job]\n'))).toBeUndefined();
  });

  test('a job of 2,000 rows has all of them', () => {
    const text = largeJob(readSample('five-panel-sedan.paneljob'), 2000);
    const rows = [...(previewOf(readFile(text))?.rows.values() ?? [])].flat();
    expect(rows.length).toBeGreaterThanOrEqual(2000);
  });
});
