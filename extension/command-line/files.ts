import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, realpathSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import type { World } from './world.ts';

function readText(path: string | number): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    if (error instanceof Error && 'code' in error) return undefined;
    throw error;
  }
}

function written(path: string, content: string | Uint8Array): boolean {
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, content);
    return true;
  } catch (error) {
    if (error instanceof Error && 'code' in error) return false;
    throw error;
  }
}

function runGit(args: readonly string[], folder?: string): ReturnType<World['git']> {
  const done = spawnSync('git', args, {
    ...(folder === undefined ? {} : { cwd: folder }),
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return done.error === undefined
    ? { status: done.status ?? -1, out: done.stdout }
    : { status: -1, out: '' };
}

/** The small program for merges beside the whole one. */
function driverBeside(program: string | undefined): string {
  if (program === undefined || !existsSync(program)) return 'merge-driver.cjs';
  return join(dirname(realpathSync(program)), 'merge-driver.cjs');
}

// The program is dist/panelwright.cjs of its package; the package says which version it is.
function versionBeside(program: string | undefined): string {
  if (program === undefined) return 'unknown';
  const text = readText(join(dirname(realpathSync(program)), '..', 'package.json')) ?? '{}';
  const read: unknown = JSON.parse(text);
  const known = typeof read === 'object' && read !== null && 'version' in read;
  return known && typeof read.version === 'string' ? read.version : 'unknown';
}

/** The world of a process: its files, its streams, and the package it was started from. */
export function processWorld(): World {
  return {
    read: readText,
    // 0 is what is piped in, on every system.
    input: () => readText(0) ?? '',
    beside: (file, path) => resolve(dirname(file), path),
    write: written,
    within: (folder, name) => join(folder, name),
    out: (text) => {
      process.stdout.write(text);
    },
    err: (text) => {
      process.stderr.write(text);
    },
    version: versionBeside(process.argv[1]),
    git: runGit,
    clock: () => performance.now(),
    driver: driverBeside(process.argv[1]),
  };
}
