import type { FileReading } from './source.ts';

/** What a file is by its head table: a job, or a shop book. */
export type FileForm = 'job' | 'book';

const heads: readonly string[] = ['job', 'book'];

/** What a file is; without a head table it is read as a job. */
export function fileForm({ blocks }: Pick<FileReading, 'blocks'>): FileForm {
  const head = blocks.find(
    ({ header }) => header !== undefined && !header.array && heads.includes(header.name),
  );
  return head?.header?.name === 'book' ? 'book' : 'job';
}
