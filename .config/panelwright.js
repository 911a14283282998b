import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { installPackages } from './start/install.js';

/** Runs the program from a checkout; the first time it is built. */
const root = dirname(dirname(fileURLToPath(import.meta.url)));
const program = join(root, 'dist/panelwright.cjs');

if (!existsSync(program)) {
  installPackages();
  execFileSync(process.execPath, [join(root, '.config/build.js')], { stdio: ['ignore', 2, 2] });
}
const { status } = spawnSync(process.execPath, [program, ...process.argv.slice(2)], {
  stdio: 'inherit',
});
process.exitCode = status ?? 1;
