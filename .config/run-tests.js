import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { installBrowser } from './start/browser.js';
import { installPackages } from './start/install.js';
import { installHosts } from './start/workbench.js';

/**
 * Runs every check from whatever state the checkout is in: installs what is missing, builds, checks and
 * tests. Ends with `N passed, N failed`. `--only workbench` leaves out all that needs no browser.
 */
const root = dirname(dirname(fileURLToPath(import.meta.url)));
const reports = join(root, 'node_modules/.cache/reports');

/** Each counts as one check. */
const tools = ['build', 'types', 'lint', 'format:check', 'layers', 'unused'];

function run(words) {
  return new Promise((resolve) => {
    const child = spawn('npm', ['run', '--silent', ...words], {
      cwd: root,
      stdio: 'inherit',
      shell: process.platform === 'win32',
    });
    child.on('close', (code) => resolve(code === 0));
  });
}

async function tool(name) {
  const started = Date.now();
  const passed = await run([name]);
  const seconds = ((Date.now() - started) / 1000).toFixed(0);
  console.log(`${passed ? 'passed' : 'FAILED'}  ${name} (${seconds} s)`);
  return { passed: passed ? 1 : 0, failed: passed ? 0 : 1 };
}

/** Runs projects of vitest and counts their tests; a run that leaves no report counts as a failure. */
async function suites(name, projects) {
  const report = join(reports, `${name}.json`);
  rmSync(report, { force: true });
  const passed = await run([
    'vitest',
    '--',
    ...projects.flatMap((project) => ['--project', project]),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
  ]);
  if (!existsSync(report)) return { passed: 0, failed: 1 };
  const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(report, 'utf8'));
  // A suite that breaks outside its tests fails the run without failing a test.
  const failed = passed ? numFailedTests : Math.max(1, numFailedTests);
  return { passed: numPassedTests, failed };
}

async function main() {
  const onlyWorkbench = process.argv.includes('--only') && process.argv.includes('workbench');
  installPackages();
  installHosts();
  installBrowser();
  mkdirSync(reports, { recursive: true });
  const counts = [];
  for (const name of onlyWorkbench ? ['build'] : tools) counts.push(await tool(name));
  if (!onlyWorkbench) counts.push(await suites('units', ['engine', 'host', 'webview']));
  counts.push(await suites('workbench', ['workbench']));
  const sum = (key) => counts.reduce((total, count) => total + count[key], 0);
  console.log(`\n${sum('passed')} passed, ${sum('failed')} failed`);
  process.exitCode = sum('failed') === 0 ? 0 : 1;
}

await main();
