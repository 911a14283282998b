import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch, until, type Workbench } from './harness/workbench.ts';

const standIn = fileURLToPath(new URL('fixtures/stand-in/', import.meta.url));
const text = 'format = 1\n\n[job]\ntitle = "Plain"\n';

let workbench: Workbench;

beforeAll(async () => {
  workbench = await launch({ extension: standIn, files: { 'inner/plain.paneljob': text } });
});

afterAll(async () => {
  await workbench.close();
});

test('a file clicked in the explorer opens in its custom editor', async () => {
  const frame = await workbench.openGrid('inner/plain.paneljob');
  expect(await frame.locator('p').innerText()).toBe('5 lines');
});

test('saving in the browser changes the file on disk', async () => {
  const frame = await workbench.gridFrame();
  await frame.locator('button').click();
  await workbench.page.locator('.tab.dirty').waitFor();
  expect(await workbench.bytes('inner/plain.paneljob')).toBe(text);
  await workbench.page.keyboard.press('Control+s');
  await workbench.page.locator('.tab.dirty').waitFor({ state: 'detached' });
  expect(await workbench.bytes('inner/plain.paneljob')).toBe(`# added\n${text}`);
});

test('a refusal of the content security policy in a webview is noticed', async () => {
  const frame = await workbench.gridFrame();
  await frame.evaluate(`{
    const meta = document.createElement('meta');
    meta.httpEquiv = 'Content-Security-Policy';
    meta.content = "img-src 'none'";
    document.head.append(meta);
    document.body.append(Object.assign(new Image(), { src: 'data:image/gif;base64,R0lGODlhAQABAAAAACw=' }));
  }`);
  await until('the violation', () => Promise.resolve(workbench.violations.length > 0));
  expect(workbench.violations.join()).toContain('img-src');
});
