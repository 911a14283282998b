import type * as vscode from 'vscode';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { setUpMerging } from '../../../extension/host/merging/set-up.ts';
import { Uri, workspace } from '../../helpers/fake-vscode.ts';

/** What stands around the command: git or none, what the person answers, what was said and set. */
interface Around {
  hasGit: boolean;
  answer: string | undefined;
  said: string[];
  settings: (readonly [string, string])[];
  run: ((given: unknown) => Promise<void>) | undefined;
}

const around = vi.hoisted((): Around => ({
  hasGit: true,
  answer: 'Set Up',
  said: [],
  settings: [],
  run: undefined,
}));

vi.mock('vscode', async (original) => {
  const fake = await original<typeof import('../../helpers/fake-vscode.ts')>();
  const say = (message: string, ...rest: readonly unknown[]): Promise<string | undefined> => {
    around.said.push(message);
    return Promise.resolve(rest.length > 0 ? around.answer : undefined);
  };
  // As git's own: what it does hangs on the object it is asked of.
  class Repository {
    readonly rootUri = fake.Uri.parse('file:/shop');
    readonly #settings = around.settings;

    setConfig(key: string, value: string): Promise<string> {
      this.#settings.push([key, value]);
      return Promise.resolve('');
    }
  }
  return {
    ...fake,
    TabInputCustom: fake.TabInputText,
    window: {
      tabGroups: { activeTabGroup: { activeTab: undefined } },
      showWarningMessage: say,
      showInformationMessage: say,
      showErrorMessage: say,
    },
    commands: {
      registerCommand: (_name: string, run: (given: unknown) => Promise<void>) => {
        around.run = run;
        return { dispose: () => undefined };
      },
    },
    extensions: {
      getExtension: () =>
        around.hasGit
          ? {
              isActive: false,
              activate: () =>
                Promise.resolve({
                  enabled: true,
                  getAPI: () => ({ getRepository: () => new Repository() }),
                }),
            }
          : undefined,
    },
  };
});

const extension = Uri.parse('file:/extensions/panelwright');
const attributes = Uri.parse('file:/shop/.gitattributes');

async function run(): Promise<void> {
  setUpMerging(extension as unknown as vscode.Uri);
  await around.run?.(Uri.parse('file:/shop/door.paneljob'));
}

async function textOf(uri: Uri): Promise<string> {
  return new TextDecoder().decode(await workspace.fs.readFile(uri));
}

beforeEach(async () => {
  Object.assign(around, { hasGit: true, answer: 'Set Up', said: [], settings: [] });
  const driver = Uri.joinPath(extension, 'dist/merge-driver.cjs');
  await workspace.fs.writeFile(driver, new TextEncoder().encode('// the driver'));
  await workspace.fs.writeFile(attributes, new TextEncoder().encode('*.png binary\n'));
});

describe('Set Up Merging for This Repository', () => {
  test('asks first, and writes nothing unless it is agreed to', async () => {
    around.answer = undefined;
    await run();
    expect(around.said).toHaveLength(1);
    expect(around.said[0]).toContain('shop books of /shop cell by cell?');
    expect(around.settings).toEqual([]);
    expect(await textOf(attributes)).toBe('*.png binary\n');
  });

  test('writes git’s settings, a copy of the program and .gitattributes', async () => {
    await run();
    await run();
    expect(around.settings.slice(0, 2)).toEqual([
      ['merge.panelwright.name', 'Panelwright, cell by cell'],
      [
        'merge.panelwright.driver',
        'node "$(git rev-parse --git-common-dir)/panelwright/merge-driver.cjs" %O %A %B -o %A --marker-size %L --path %P',
      ],
    ]);
    expect(await textOf(attributes)).toBe(
      '*.png binary\n*.paneljob merge=panelwright\n*.panelbook merge=panelwright\n',
    );
    const copy = Uri.parse('file:/shop/.git/panelwright/merge-driver.cjs');
    expect(await textOf(copy)).toBe('// the driver');
  });

  test('a linked worktree shares the settings and the copy of its repository', async () => {
    const put = (path: string, text: string): Promise<void> =>
      workspace.fs.writeFile(Uri.parse(`file:${path}`), new TextEncoder().encode(text));
    await put('/shop/.git', 'gitdir: /main/.git/worktrees/shop\n');
    await put('/main/.git/worktrees/shop/commondir', '../..\n');
    await run();
    const copy = Uri.parse('file:/main/.git/panelwright/merge-driver.cjs');
    expect(await textOf(copy)).toBe('// the driver');
  });

  test('where VS Code has no git it says what is missing', async () => {
    around.hasGit = false;
    await run();
    expect(around.said.join()).toContain('VS Code has no git here');
    expect(around.settings).toEqual([]);
  });
});
