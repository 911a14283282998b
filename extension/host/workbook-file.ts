import { jobWorkbook } from '../engine/index.ts';
import type { JobDesk } from './job-desk.ts';
import { besideJob, writeFile } from './write-file.ts';

/** Writes the whole job as a workbook of a spreadsheet program, with formulas where they hold. */
export async function exportWorkbook(desk: JobDesk): Promise<void> {
  await writeFile({
    place: besideJob(desk.document.uri, '.xlsx'),
    title: 'Export Workbook',
    filters: { Workbook: ['xlsx'] },
    bytes: () => jobWorkbook(desk.snapshot()),
    name: 'Workbook',
  });
}
