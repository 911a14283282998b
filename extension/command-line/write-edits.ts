import { applyEdits, type Edit, type FileReading } from '../engine/index.ts';
import { refused, unwritable } from './endings.ts';
import { exitCodes, type ExitCode, type World } from './world.ts';

/** Writes edits into a file where that is asked for; else says how. */
export function writeEdits(
  at: { readonly file: string; readonly reading: FileReading; readonly write: boolean },
  edits: readonly Edit[],
  world: World,
): ExitCode {
  const { file, reading, write } = at;
  if (edits.length === 0) return exitCodes.fine;
  const applied = applyEdits(reading, edits);
  if (!applied.ok) {
    world.err(`panelwright: ${applied.problem.message}\n`);
    return exitCodes.problems;
  }
  if (!write) {
    world.out(`Nothing is written; --write writes ${file}.\n`);
    return exitCodes.fine;
  }
  if (!world.write(file, applied.value.reading.text)) return refused(unwritable(file), world);
  world.out(`${file} is written.\n`);
  return exitCodes.fine;
}

/** A text in a column of so many letters. */
export function inColumn(text: string, letters: number): string {
  return text.padEnd(letters);
}
