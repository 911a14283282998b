import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isInstalled } from '../../.config/start/install.js';

let folder: string;

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'panelwright-install-'));
});

afterEach(async () => {
  await rm(folder, { recursive: true, force: true });
});

type Packages = Readonly<Record<string, object>>;

async function lay(wanted: Packages, found: Packages | undefined): Promise<void> {
  await writeFile(join(folder, 'package-lock.json'), JSON.stringify({ packages: wanted }));
  if (found === undefined) return;
  await mkdir(join(folder, 'node_modules'));
  await writeFile(
    join(folder, 'node_modules/.package-lock.json'),
    JSON.stringify({ packages: found }),
  );
}

describe('isInstalled', () => {
  const saw = { 'node_modules/saw': { version: '1.0.0' } };

  test.each([
    ['nothing is installed', saw, undefined, false],
    ['all versions are those of the lockfile', saw, saw, true],
    ['a version is an older one', saw, { 'node_modules/saw': { version: '0.9.0' } }, false],
    ['a package is missing', { ...saw, 'node_modules/drill': { version: '2.0.0' } }, saw, false],
    [
      'only what is for other machines is missing',
      { '': {}, ...saw, 'node_modules/drill-mac': { version: '2.0.0', optional: true } },
      saw,
      true,
    ],
  ])('where %s', async (_case, wanted: Packages, found: Packages | undefined, answer) => {
    await lay(wanted, found);
    expect(isInstalled(folder)).toBe(answer);
  });
});
