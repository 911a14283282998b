import { readArguments } from './arguments.ts';
import { processWorld } from './files.ts';
import { merge } from './merge.ts';
import { exitCodes } from './world.ts';

// git's merge driver: `panelwright merge` alone, so that it starts at once.
const world = processWorld();
const asked = readArguments(['merge', ...process.argv.slice(2)]);
if (asked.ok && asked.request.command === 'merge') {
  process.exitCode = merge(asked.request, world);
} else {
  world.err(`panelwright merge: ${asked.ok ? 'needs BASE OURS THEIRS.' : asked.fault}\n`);
  process.exitCode = exitCodes.misuse;
}
