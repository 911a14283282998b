import { fileURLToPath } from 'node:url';
import { runInNewContext } from 'node:vm';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { CutInstance } from '../../extension/engine/cutting/instance.ts';
import { classInstance, pricedInstance } from '../helpers/cut-sets.ts';
import { doorParts, doorsOn } from '../helpers/door-parts.ts';
import { launchBrowser, type Browser, type Page } from './harness/browser.ts';

const parts = [
  { id: 'base', length: 640, width: 330, count: 4, rotations: [0, 180] },
  { id: 'ring', length: 190, width: 190, count: 8 },
  { id: 'strip', length: 610, width: 57.2, count: 11 },
];

const rolls: readonly CutInstance[] = [
  {
    kind: 'bolt',
    stocks: [{ id: 'vinyl', length: 228.6, width: 1371.6, price: 6 }],
    ...{ parts, kerf: 4, effort: 'live', repeat: { along: 0, across: 0 } },
  },
  {
    kind: 'bolt',
    stocks: [{ id: 'cloth', length: 100, width: 1400, price: 3 }],
    parts: doorParts.slice(0, 4).map((one) => ({ ...one, rotations: [0, 180] })),
    effort: 'live',
  },
  {
    kind: 'strips',
    stocks: [{ id: 'lath', length: 2440, width: 0, price: 7 }],
    parts: [571.4, 612.2, 733.9, 328.1].map((length, at) => ({
      ...{ id: String(at), length, width: 0 },
      count: 5 + at,
    })),
    ...{ kerf: 3.2, effort: 'live' },
  },
  {
    kind: 'packs',
    need: 700,
    packs: [
      { id: 'quart', size: 32, price: 2499 },
      { id: 'gallon', size: 128, price: 6999, breaks: [{ from: 4, price: 6500 }] },
    ],
  },
];

const rectangles = [1, 2, 4, 6, 7, 9, 10].flatMap((kind): readonly CutInstance[] => [
  { ...classInstance(kind, 40, 3), method: 'guillotine', effort: 'live' },
  { ...pricedInstance(kind > 6 ? 4 : kind, 20, 5), kerf: 0.3, effort: 'live' },
]);

const instances: readonly CutInstance[] = [
  ...rectangles,
  ...rolls,
  { ...doorsOn(2440, 1220), effort: 'live' },
  {
    ...doorsOn(1220, 610),
    parts: doorParts.slice(3).map((one) => ({ ...one, rotations: [0, 15] })),
    effort: 'live',
  },
];

let program = '';
let browser: Browser;
let page: Page;

beforeAll(async () => {
  const entry = fileURLToPath(new URL('../bench/cutting-program.ts', import.meta.url));
  // Minified for both, as it is shipped.
  const { outputFiles } = await build({
    entryPoints: [entry],
    ...{ bundle: true, minify: true, write: false, target: 'es2022' },
    ...{ format: 'iife', globalName: 'cutting' },
  });
  program = outputFiles[0]?.text ?? '';
  browser = await launchBrowser();
  const context = await browser.newContext({ viewport: { width: 300, height: 200 } });
  page = await context.newPage();
});

afterAll(async () => {
  await browser.close();
});

describe('layOut', () => {
  test(`${instances.length} instances are laid byte for byte alike in Node and in Chromium`, async () => {
    const script = `${program};JSON.stringify(${JSON.stringify(instances)}.map(one => JSON.stringify(cutting.layOut(one))))`;
    const here = JSON.parse(String(runInNewContext(script))) as readonly string[];
    const there = JSON.parse(await page.evaluate<string>(script)) as readonly string[];
    expect(here.length).toBe(instances.length);
    here.forEach((answer, at) => {
      expect(there[at], JSON.stringify(instances[at]).slice(0, 80)).toBe(answer);
    });
  });
});
