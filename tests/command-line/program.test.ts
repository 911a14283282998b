import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdtempSync, mkdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));
const folder = mkdtempSync(join(tmpdir(), 'panelwright-'));
const program = join(folder, 'dist', 'panelwright.cjs');

function started(...args: readonly string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    cwd: join(root, 'sample-jobs'),
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}

beforeAll(async () => {
  mkdirSync(dirname(program));
  copyFileSync(join(root, 'package.json'), join(folder, 'package.json'));
  await build({
    absWorkingDir: root,
    entryPoints: ['extension/command-line/main.ts'],
    outfile: program,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    loader: { '.toml': 'text' },
    logLevel: 'error',
  });
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe('the program', () => {
  test('estimates the sample job with the shop book beside it', () => {
    const { status, stdout, stderr } = started('estimate', 'front-door-pair.paneljob');
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^Price \d+\.\d\d USD \(\d+\.\d\d USD with tax\), \d+ h( \d+ min)?, /m);
    expect(stdout).not.toContain('demo book');
  });

  test('knows its version from the package', () => {
    expect(started('--version').stdout).toMatch(/^panelwright \d+\.\d+\.\d+\n$/);
  });

  test('ends with 2 where a file is missing and 1 where a formula has no answer', () => {
    expect(started('estimate', 'nowhere.paneljob').status).toBe(2);
    expect(started('calc', '=1in + 2qt').status).toBe(1);
  });
});
