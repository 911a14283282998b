import { buildSync } from 'esbuild';
import { repository } from './source-files.ts';

/** Builds git's merge driver as it is shipped, into a file. */
export function buildMergeDriver(file: string): void {
  buildSync({
    absWorkingDir: repository,
    entryPoints: ['extension/command-line/merge-main.ts'],
    outfile: file,
    bundle: true,
    minify: true,
    platform: 'node',
    format: 'cjs',
    target: 'es2022',
    loader: { '.toml': 'text' },
    logLevel: 'error',
  });
}
