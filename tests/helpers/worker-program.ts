import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/** The worker's program in one piece, as dist holds it. */
export async function workerProgram(): Promise<Uint8Array> {
  const made = await build({
    entryPoints: [fileURLToPath(new URL('../../extension/worker/main.ts', import.meta.url))],
    bundle: true,
    platform: 'browser',
    format: 'iife',
    write: false,
  });
  const [file] = made.outputFiles;
  if (file === undefined) throw new Error('The worker was not built.');
  return file.contents;
}
