import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { npm } from './install.js';
import { freePort, layOutExtension } from './workbench.js';

/**
 * A VS Code server whose extensions run in Node, on the real disk and with the built-in git extension.
 * Nothing of it is shipped; it is installed and compiled only where `npm run test:node-host` is run.
 */
const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const cache = join(root, 'node_modules/.cache/node-host');
const server = join(cache, 'node_modules/code-server');
const code = join(server, 'lib/vscode');
const stamp = join(cache, 'complete');

/** The release that comes with VS Code 1.100, the oldest that the manifest admits. */
const release = '4.100.3';

/** What the server cannot do without; the proxies' Kerberos is none of it. */
const compiled = ['native-watchdog', '@vscode/spdlog', '@parcel/watcher', 'node-pty'];

/** Why the server cannot be installed here; `undefined` when it can. */
export function nodeHostHindrance() {
  if (process.platform === 'win32') return 'on Windows its parts cannot be compiled';
  return process.versions.node.startsWith('20.') ? undefined : 'it wants Node 20';
}

/** The headers of the Node that runs this, where they came with it; else they are fetched. */
function headers() {
  const place = dirname(dirname(realpathSync(process.execPath)));
  return existsSync(join(place, 'include/node/node.h')) ? [`--nodedir=${place}`] : [];
}

/**
 * @param {string} program
 * @param {readonly string[]} words
 * @param {string} folder
 */
function compile(program, words, folder) {
  console.log(`Compiling ${folder.slice(folder.lastIndexOf('node_modules/') + 13)} …`);
  execFileSync(process.execPath, [program, ...words, ...headers()], {
    cwd: folder,
    stdio: ['ignore', 'ignore', 'pipe'],
    // A compiler says a lot; it is shown only where it fails.
    maxBuffer: 2 ** 26,
  });
}

/** The program that finds files, which the server's package would fetch for itself. */
function linkSearch() {
  const find = () =>
    (process.env['PATH'] ?? '')
      .split(delimiter)
      .map((folder) => join(folder, 'rg'))
      .find((file) => existsSync(file));
  if (find() === undefined && existsSync('/usr/bin/apt-get') && process.getuid?.() === 0) {
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'ripgrep'], {
      stdio: ['ignore', 'ignore', 'inherit'],
    });
  }
  const program = find();
  if (program === undefined) throw new Error('The server wants ripgrep (rg) on the path.');
  const place = join(code, 'node_modules/@vscode/ripgrep/bin');
  mkdirSync(place, { recursive: true });
  symlinkSync(program, join(place, 'rg'));
}

/** Installs and compiles the server, unless it is there: about three minutes on two cores. */
export function installNodeHost() {
  const wanted = `${release}, node ${process.versions.node}`;
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return;
  console.log('Installing the VS Code server …');
  rmSync(cache, { recursive: true, force: true });
  mkdirSync(cache, { recursive: true });
  const manifest = { private: true, dependencies: { 'code-server': release } };
  writeFileSync(join(cache, 'package.json'), JSON.stringify(manifest));
  const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];
  npm(['install', ...quiet], cache);
  npm(['install', '--omit=dev', ...quiet], code);
  const npmPlace = execFileSync('npm', ['root', '--global'], { encoding: 'utf8' }).trim();
  const gyp = join(npmPlace, 'npm/node_modules/node-gyp/bin/node-gyp.js');
  for (const name of compiled) compile(gyp, ['rebuild'], join(code, 'node_modules', name));
  const argon = join(cache, 'node_modules/argon2');
  const preGyp = join(cache, 'node_modules/.bin/node-pre-gyp');
  compile(preGyp, ['install', '--build-from-source'], argon);
  linkSearch();
  writeFileSync(stamp, wanted);
}

/** @param {string} url */
async function answers(url) {
  try {
    return (await fetch(url)).ok;
  } catch {
    return false;
  }
}

/**
 * Serves a folder on this machine by a VS Code whose extensions run in Node, with this repository's
 * extension as shipped.
 *
 * @param {{ folder: string, settings: Record<string, unknown>, env?: Record<string, string> }} options
 */
export async function serveNodeHost({ folder, settings, env = {} }) {
  const place = mkdtempSync(join(tmpdir(), 'panelwright-server-'));
  const extensions = join(place, 'extensions');
  layOutExtension(root, join(extensions, 'panelwright.panelwright-0.1.0'));
  mkdirSync(join(place, 'data/User'), { recursive: true });
  writeFileSync(join(place, 'data/User/settings.json'), JSON.stringify(settings));
  const port = await freePort();
  const words = [
    ...['--config', join(place, 'config.yaml'), '--bind-addr', `127.0.0.1:${port}`],
    ...['--auth', 'none', '--user-data-dir', join(place, 'data')],
    ...['--extensions-dir', extensions, '--disable-telemetry', '--disable-update-check'],
    ...['--disable-workspace-trust', '--disable-getting-started-override'],
  ];
  const inherited = Object.entries(process.env).filter(([name]) => !name.startsWith('VSCODE_'));
  const child = spawn(process.execPath, [join(server, 'out/node/entry.js'), ...words], {
    stdio: ['ignore', 'ignore', 'pipe'],
    env: { ...Object.fromEntries(inherited), ...env },
  });
  let said = '';
  child.stderr.on('data', (piece) => {
    said = `${said}${String(piece)}`.slice(-4000);
  });
  const ended = once(child, 'exit');
  async function close() {
    if (child.exitCode === null) child.kill();
    await ended;
    rmSync(place, { recursive: true, force: true, maxRetries: 5 });
  }
  const end = Date.now() + 60_000;
  const url = `http://127.0.0.1:${port}/`;
  while (!(await answers(url))) {
    if (child.exitCode !== null || Date.now() > end) {
      await close();
      throw new Error(`The VS Code server has not come up.\n${said}`);
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return {
    url: `${url}?${new URLSearchParams({ folder }).toString()}`,
    close,
  };
}
