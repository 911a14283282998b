import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** Bundles the suite that runs inside an extension host; gives the file. */
export async function bundleExtensionSuite() {
  const outfile = join(root, 'node_modules/.cache/workbench/suite.cjs');
  await build({
    entryPoints: [join(root, 'tests/workbench/extension-host/suite.ts')],
    outfile,
    bundle: true,
    platform: 'browser',
    format: 'cjs',
    external: ['vscode'],
    logLevel: 'warning',
  });
  return outfile;
}
