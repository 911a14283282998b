import { bookOut, readFile } from '../engine/index.ts';
import { readJob } from './job.ts';
import type { ReuseRequest } from './reuse-arguments.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';
import { unreadableFile, writeEdits } from './write-edits.ts';

/** Tells what a job that is built does to the shelf, and writes it into its book where that is asked for. */
export function bookOutMaterials(
  request: Extract<ReuseRequest, { command: 'bookout' }>,
  world: World,
): ExitCode {
  const { file, write } = request;
  const job = readJob(file, world);
  if (job === undefined) return unreadableFile(file, world);
  const named = job.snapshot.shown.head.get('book')?.text ?? '';
  if (named === '') {
    world.err(`panelwright: ${file} names no shop book, so there is no shelf to book out of.\n`);
    return exitCodes.misuse;
  }
  const book = world.beside(file, named);
  const text = world.read(book);
  if (text === undefined) return unreadableFile(book, world);
  const reading = readFile(text);
  const lines = bookOut(job.snapshot, reading);
  for (const { words } of lines) world.out(`${words}\n`);
  if (lines.length === 0) world.out('The shelf stays as it is.\n');
  const edits = lines.flatMap((line) => line.edits);
  return writeEdits({ file: book, reading, write }, edits, world);
}
