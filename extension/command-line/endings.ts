import { exitCodes, type ExitCode, type World } from './world.ts';

/** Why a file cannot be read, and the way out. */
export function unreadable(file: string): string {
  return `${file} cannot be read. Is the path right?`;
}

/** Why a file cannot be written, and the way out. */
export function unwritable(file: string): string {
  return `${file} cannot be written. Is its folder there, and may you write in it?`;
}

/** Says why nothing comes of what was asked for. */
export function refused(fault: string, world: World): ExitCode {
  world.err(`panelwright: ${fault}\n`);
  return exitCodes.misuse;
}

/** Writes a file and names it; says so where it cannot be written. */
export function outFile(file: string, content: string | Uint8Array, world: World): ExitCode {
  if (!world.write(file, content)) return refused(unwritable(file), world);
  world.out(`${file}\n`);
  return exitCodes.fine;
}
