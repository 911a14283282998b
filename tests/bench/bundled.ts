import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

/**
 * A program of this folder as it is shipped, in one file: the runner's own loading would make each
 * call a look-up.
 */
export async function bundled(name: string): Promise<unknown> {
  const outfile = fileURLToPath(
    new URL(`../../node_modules/.cache/bench/${name}.mjs`, import.meta.url),
  );
  const entry = fileURLToPath(new URL(`${name}.ts`, import.meta.url));
  await build({
    entryPoints: [entry],
    outfile,
    bundle: true,
    format: 'esm',
    target: 'es2022',
    loader: { '.toml': 'text' },
  });
  return import(outfile);
}
