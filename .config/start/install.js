import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/**
 * @typedef {{ version?: string, optional?: boolean, peer?: boolean, link?: boolean }} LockedPackage
 * @typedef {{ packages: Record<string, LockedPackage> }} Lock
 */

/**
 * @param {string} path
 * @returns {Lock | undefined}
 */
function lockAt(path) {
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : undefined;
}

/** Whether node_modules holds exactly what the lockfile of a folder asks for. */
export function isInstalled(/** @type {string} */ folder) {
  const wanted = lockAt(join(folder, 'package-lock.json'));
  const found = lockAt(join(folder, 'node_modules/.package-lock.json'));
  if (wanted === undefined || found === undefined) return false;
  return Object.entries(wanted.packages).every(
    ([place, { version, optional, peer }]) =>
      place === '' ||
      optional === true ||
      peer === true ||
      found.packages[place]?.version === version,
  );
}

/**
 * Runs npm where the operating system keeps it.
 *
 * @param {readonly string[]} words
 * @param {string} folder
 */
export function npm(words, folder = root) {
  execFileSync('npm', words, {
    cwd: folder,
    stdio: ['ignore', 'inherit', 'inherit'],
    shell: process.platform === 'win32',
  });
}

/** Installs what the lockfile of a folder asks for, unless it is there. */
export function installPackages(folder = root) {
  if (isInstalled(folder)) return;
  console.log(`Installing packages of ${folder === root ? 'the project' : folder} …`);
  npm(['ci', '--no-audit', '--no-fund', '--loglevel=error'], folder);
}
