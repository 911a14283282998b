import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runInNewContext } from 'node:vm';
import { build } from 'esbuild';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { launchBrowser, type Browser, type Page } from './harness/browser.ts';
import { repository } from './harness/workbench.ts';

const folder = join(repository, 'sample-jobs');
const book = readFileSync(join(folder, 'books/demo-shop.panelbook'), 'utf8');

/** What both hosts are asked: the price, its band, and which cells move it most. */
const asking = `
import { costDrivers, openSession, priceBand } from './engine/index.ts';
export function figures(job, book) {
  const session = openSession(job, book);
  const snapshot = session.snapshot();
  const { price, work } = snapshot;
  const drivers = costDrivers(session);
  return JSON.stringify({ charges: price.charges, price: price.price, minutes: work.minutes, band: priceBand(snapshot), drivers });
}
`;

let program = '';
let browser: Browser;
let page: Page;

beforeAll(async () => {
  const { outputFiles } = await build({
    stdin: {
      contents: asking,
      loader: 'ts',
      resolveDir: fileURLToPath(new URL('../../extension/', import.meta.url)),
    },
    ...{ bundle: true, minify: true, write: false, target: 'es2022' },
    ...{ format: 'iife', globalName: 'asked', loader: { '.toml': 'text' } },
  });
  program = outputFiles[0]?.text ?? '';
  browser = await launchBrowser();
  const context = await browser.newContext({ viewport: { width: 300, height: 200 } });
  page = await context.newPage();
});

afterAll(async () => {
  await browser.close();
});

describe('priceBand and costDrivers', () => {
  test('price, band and cost drivers of a job are the same figures in Node and in Chromium', async () => {
    const sample = readFileSync(join(folder, 'front-door-pair.paneljob'), 'utf8');
    const ranged = 'minutes = "150 min"\n\nlow = "110 min"\n\nhigh = "260 min"\n';
    const job = sample.replace('kind = "upholster"\n', (kind) => `${kind}${ranged}`);
    const script = `${program};asked.figures(${JSON.stringify(job)}, ${JSON.stringify(book)})`;
    const here = String(runInNewContext(script));
    const found = JSON.parse(here) as { band?: object; drivers: readonly object[] };
    expect(found.band).toBeDefined();
    expect(found.drivers.length).toBe(5);
    expect(await page.evaluate<string>(script)).toBe(here);
  });
});
