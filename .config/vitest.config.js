import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { tomlAsText } from './toml-as-text.js';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

const engineTests = [
  'engine',
  'protocol',
  'command-line',
  'samples',
  'handbook',
  'architecture',
  'worker',
  'start',
].map((folder) => `tests/${folder}/**/*.test.ts`);

/** A project states everything itself: projects inherit nothing from the root. */
function project(name, include, more = {}) {
  return {
    root,
    plugins: [tomlAsText()],
    ...more,
    test: { name, include, environment: 'node', ...more.test },
  };
}

// One workbench at a time: two browsers on two cores make each other late.
const unhurried = { fileParallelism: false, testTimeout: 120_000, hookTimeout: 180_000 };

export default defineConfig({
  root,
  test: {
    maxWorkers: '100%',
    projects: [
      // The engine keeps nothing between calls, so its modules are read once a worker, not once a file:
      // that is more than half of the time.
      project('engine', engineTests, { test: { testTimeout: 60_000, isolate: false } }),
      project('host', ['tests/host/**/*.test.ts'], {
        resolve: { alias: { vscode: join(root, 'tests/helpers/fake-vscode.ts') } },
        test: { testTimeout: 60_000 },
      }),
      project('webview', ['tests/webview/**/*.test.ts'], {
        test: { environment: 'happy-dom', testTimeout: 60_000, hookTimeout: 60_000 },
      }),
      project('workbench', ['tests/workbench/**/*.test.ts'], { test: unhurried }),
      // Its server is compiled first: `npm run test:node-host`.
      project('node-host', ['tests/node-host/**/*.test.ts'], { test: unhurried }),
      // Measurements and pictures are made on request, not checked.
      project('bench', ['tests/bench/**/*.bench.ts'], { test: unhurried }),
      project('pictures', ['tests/workbench/**/*.pictures.ts'], { test: unhurried }),
    ],
    coverage: {
      provider: 'v8',
      include: ['{extension,webview}/**/*.ts'],
      exclude: ['**/*.d.ts'],
      reportsDirectory: 'coverage',
      thresholds: {
        'extension/engine/**/*.ts': { lines: 95, branches: 90 },
        '{extension/{host,protocol,command-line,worker},webview}/**/*.ts': {
          lines: 80,
          branches: 70,
        },
      },
    },
  },
});
