import { bookOut, readFile } from '../engine/index.ts';
import { refused, unreadable } from './endings.ts';
import { readJob } from './job.ts';
import type { ReuseRequest } from './reuse-arguments.ts';
import type { ExitCode, World } from './world.ts';
import { writeEdits } from './write-edits.ts';

/** Tells what a job that is built does to the shelf, and writes it into its book where that is asked for. */
export function bookOutMaterials(
  request: Extract<ReuseRequest, { command: 'bookout' }>,
  world: World,
): ExitCode {
  const { file, write } = request;
  const job = readJob(file, world);
  if (job === undefined) return refused(unreadable(file), world);
  const named = job.snapshot.shown.head.get('book')?.text ?? '';
  if (named === '')
    return refused(`${file} names no shop book, so there is no shelf to book out of.`, world);
  const book = world.beside(file, named);
  const text = world.read(book);
  if (text === undefined) return refused(unreadable(book), world);
  const reading = readFile(text);
  const lines = bookOut(job.snapshot, reading);
  for (const { words } of lines) world.out(`${words}\n`);
  if (lines.length === 0) world.out('The shelf stays as it is.\n');
  const edits = lines.flatMap((line) => line.edits);
  return writeEdits({ file: book, reading, write }, edits, world);
}
