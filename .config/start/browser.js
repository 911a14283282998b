import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const hosts = join(root, 'tests/workbench/hosts');

/** Where a browser of Chromium's family may stand; the first that is there is used. */
const places = [
  process.env['CHROMIUM'] ?? '',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/microsoft-edge',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** The browser that the browser driver would fetch for itself. */
function driversOwn() {
  /** @type {{ chromium: { executablePath: () => string } }} */
  const { chromium } = createRequire(join(hosts, 'package.json'))('playwright-core');
  return chromium.executablePath();
}

/** Program file of a browser on this machine; needs the browser driver. */
export function findBrowser() {
  return [...places, driversOwn()].find((place) => place !== '' && existsSync(place));
}

/** Puts a browser on the machine, unless there is one: from the system's packages, else the driver's. */
export function installBrowser() {
  if (findBrowser() !== undefined) return;
  console.log('Installing a browser …');
  if (existsSync('/usr/bin/apt-get') && process.getuid?.() === 0) {
    /** @type {import('node:child_process').ExecFileSyncOptions} */
    const quiet = {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    };
    execFileSync('apt-get', ['update', '-qq'], quiet);
    const packages = ['chromium', 'fonts-liberation'];
    execFileSync(
      'apt-get',
      ['install', '-y', '-qq', '--no-install-recommends', ...packages],
      quiet,
    );
    return;
  }
  const cli = join(hosts, 'node_modules/playwright-core/cli.js');
  execFileSync(process.execPath, [cli, 'install', 'chromium'], { stdio: 'inherit' });
}
