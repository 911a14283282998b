import { execFileSync, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fetchDesktop } from './desktop.js';
import { installPackages } from './install.js';
import { installHosts, serveWorkbench } from './workbench.js';

/**
 * Installs what is missing, builds, prints the estimate of a sample job and opens it in VS Code: the
 * machine's own, else a desktop VS Code fetched for this, else a workbench in the browser.
 * `--print` stops after the estimate; `--browser` goes straight to the browser.
 */
const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const jobs = join(root, 'sample-jobs');
const opener = join(root, '.config/start/sample-extension');
/** @type {{ opens: string }} */
const { opens: sample } = JSON.parse(readFileSync(join(opener, 'package.json'), 'utf8'));

/** @param {readonly string[]} words */
function node(...words) {
  execFileSync(process.execPath, words, { cwd: root, stdio: 'inherit' });
}

/** Whether this machine has a VS Code that answers to its name. */
function hasOwnCode() {
  try {
    execFileSync('code', ['--version'], { stdio: 'ignore', shell: process.platform === 'win32' });
    return true;
  } catch {
    return false;
  }
}

/** @param {string} program */
function openDesktop(program) {
  const extensions = [root, opener].map((path) => `--extensionDevelopmentPath=${path}`);
  const words = [...extensions, '--new-window', jobs];
  const shell = process.platform === 'win32';
  spawn(program, shell ? words.map((word) => `"${word}"`) : words, {
    stdio: 'ignore',
    detached: true,
    shell,
  }).unref();
}

/** @param {string} url */
function openInBrowser(url) {
  const [program = '', ...words] =
    process.platform === 'win32'
      ? ['cmd', '/c', 'start', '""', `"${url}"`]
      : [process.platform === 'darwin' ? 'open' : 'xdg-open', url];
  const opening = spawn(program, words, {
    stdio: 'ignore',
    windowsVerbatimArguments: true,
  });
  // Without a program that opens pages, the address on the screen has to do.
  opening.on('error', () => undefined);
}

async function openWorkbench() {
  installHosts();
  const workbench = await serveWorkbench({ folder: jobs, beside: opener });
  console.log(`\nPanelwright is open in your browser, saving to ${jobs}:\n\n  ${workbench.url}\n`);
  console.log('The address opens that one folder to whoever has it. Ctrl+C ends it.');
  openInBrowser(workbench.url);
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, () => void workbench.close().then(() => process.exit(0)));
  }
}

async function start() {
  installPackages();
  node('.config/build.js');
  node('dist/panelwright.cjs', 'estimate', join('sample-jobs', sample));
  if (process.argv.includes('--print')) return;
  if (!process.argv.includes('--browser')) {
    const code = hasOwnCode() ? 'code' : await fetchDesktop();
    if (code !== undefined) {
      openDesktop(code);
      return;
    }
  }
  await openWorkbench();
}

await start();
