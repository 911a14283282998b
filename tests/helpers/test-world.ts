import { posix } from 'node:path';
import type { World } from '../../extension/command-line/world.ts';

/** A world of files in memory that keeps what is written. */
export interface TestWorld extends World {
  readonly written: () => { readonly out: string; readonly err: string };
  /** Files that were written. */
  readonly files: ReadonlyMap<string, string | Uint8Array>;
}

export function testWorld(files: Readonly<Record<string, string>> = {}, piped = ''): TestWorld {
  const streams = { out: '', err: '' };
  const kept = new Map<string, string | Uint8Array>();
  return {
    read: (path) => files[path],
    input: () => piped,
    write: (path, content) => {
      if (path.startsWith('/sealed/')) return false;
      kept.set(path, content);
      return true;
    },
    within: (folder, name) => posix.join(folder, name),
    files: kept,
    beside: (file, path) => posix.join(posix.dirname(file), path),
    out: (text) => {
      streams.out += text;
    },
    err: (text) => {
      streams.err += text;
    },
    version: '1.2.3',
    git: () => ({ status: -1, out: '' }),
    clock: () => 0,
    driver: '/programs/merge-driver.cjs',
    written: () => ({ ...streams }),
  };
}

/** A small job that is in order. */
export const smallJob = `format = 1

[job]
title = "One shelf"
client = "Demo client"

units = "in"
currency = "USD"

[[panel]]
id = "shelf"

name = "Shelf"
hands = "pair"

[[part]]
id = "board"

name = "Board"
kind = "base"
panel = "shelf"

material = "hardboard_6"
shape = "rect(24in, 12in)"

[[part]]
id = "freight"

name = "Freight"
kind = "extra"

price = "18.50 USD"
`;

/** The same with a formula that adds a length and a volume. */
export const brokenJob = smallJob.replace('price = "18.50 USD"', 'price = "=1in + 2qt"');
