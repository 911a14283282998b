import { afterAll, beforeAll, expect, test } from 'vitest';
import { bundleExtensionSuite } from '../../.config/start/extension-suite.js';
import { cases } from './extension-host/case-names.ts';
import { launch, type Workbench } from './harness/workbench.ts';

const results = new Map<string, string>();
let workbench: Workbench;

beforeAll(async () => {
  workbench = await launch({ suite: await bundleExtensionSuite() });
  for (const line of await workbench.suiteLines()) {
    const [, result, name = '', reason = ''] =
      /^case: (ok|not ok) - (.*?)(?: - (.*))?$/.exec(line) ?? [];
    if (result !== undefined) results.set(name, result === 'ok' ? 'ok' : reason);
  }
});

afterAll(async () => {
  await workbench.close();
});

test.each(cases)('in the browser’s extension host, %s', (name) => {
  expect(results.get(name)).toBe('ok');
});

test('no case of the suite is left out of the count', () => {
  expect([...results.keys()].sort()).toEqual([...cases].sort());
});
