import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runTests } from '@vscode/test-electron';
import { buildAll } from './build.js';
import { desktopHindrance } from './start/desktop.js';
import { bundleExtensionSuite } from './start/extension-suite.js';

/**
 * Runs the extension-host suite in a desktop VS Code: `npm run test:desktop -- --code 1.100.0`. Where
 * none can be fetched it says so and counts as skipped.
 */
const root = dirname(dirname(fileURLToPath(import.meta.url)));

async function main() {
  const hindrance = await desktopHindrance();
  if (hindrance !== undefined) {
    console.log(`Skipped: desktop VS Code cannot be run here, ${hindrance}.`);
    return;
  }
  const faults = await buildAll();
  if (faults.length > 0) throw new Error(faults.join('\n'));
  const place = process.argv.indexOf('--code');
  const folder = mkdtempSync(join(tmpdir(), 'panelwright-desktop-'));
  cpSync(join(root, 'sample-jobs'), folder, { recursive: true });
  try {
    await runTests({
      ...(place < 0 ? {} : { version: process.argv[place + 1] }),
      extensionDevelopmentPath: root,
      extensionTestsPath: await bundleExtensionSuite(),
      launchArgs: [folder, '--disable-extensions', '--disable-workspace-trust'],
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

await main();
