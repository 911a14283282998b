import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { installBrowser } from './start/browser.js';
import { installPackages } from './start/install.js';
import { installNodeHost, nodeHostHindrance } from './start/node-host.js';
import { installHosts } from './start/workbench.js';

/**
 * Runs what needs git in a VS Code whose extensions run in Node: `npm run test:node-host`. Installs and
 * compiles the server first, where it is missing. Words behind `--` go to vitest.
 */
const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** @param {readonly string[]} words */
function node(...words) {
  return spawnSync(process.execPath, words, { cwd: root, stdio: 'inherit' }).status ?? 1;
}

function main() {
  const hindrance = nodeHostHindrance();
  if (hindrance !== undefined) {
    console.log(`Skipped: the VS Code server cannot be run here, ${hindrance}.`);
    return;
  }
  installPackages();
  installHosts();
  installBrowser();
  installNodeHost();
  const config = join(root, '.config/vitest.config.js');
  const vitest = join(root, 'node_modules/vitest/vitest.mjs');
  process.exitCode =
    node('.config/build.js') ||
    node(vitest, 'run', '--config', config, '--project', 'node-host', ...process.argv.slice(2));
}

main();
