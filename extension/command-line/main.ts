import { processWorld } from './files.ts';
import { run } from './run.ts';

// A reader such as head may close the pipe before everything is written; that is no fault of ours.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

process.exitCode = run(process.argv.slice(2), processWorld());
