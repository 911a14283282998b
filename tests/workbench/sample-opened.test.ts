import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { launch, repository, type Workbench } from './harness/workbench.ts';

let workbench: Workbench;

beforeAll(async () => {
  workbench = await launch({ beside: join(repository, '.config/start/sample-extension') });
});

afterAll(async () => {
  await workbench.close();
});

test('the sample job that npm start shows is open in the grid, not as text', async () => {
  const frame = await workbench.gridFrame();
  await frame.locator('h1', { hasText: 'Front door pair' }).waitFor();
  const tabs = workbench.page.locator('.tabs-container .tab');
  expect(await tabs.allInnerTexts()).toEqual(['front-door-pair.paneljob']);
});
