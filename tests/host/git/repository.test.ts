import { beforeEach, describe, expect, test, vi } from 'vitest';
import type * as vscode from 'vscode';
import {
  commitTime,
  repositoryOf,
  textAt,
  type GitRepository,
} from '../../../extension/host/git/repository.ts';
import { Uri } from '../../helpers/fake-vscode.ts';

/** The git extension as it stands on a machine. */
interface Around {
  git: object | undefined;
  /** Folder of the workspace that holds the job, where there is one. */
  folder: string | undefined;
}

const around = vi.hoisted((): Around => ({ git: undefined, folder: undefined }));

vi.mock('vscode', async (original) => {
  const fake = await original<typeof import('../../helpers/fake-vscode.ts')>();
  return {
    ...fake,
    workspace: {
      ...fake.workspace,
      getWorkspaceFolder: () =>
        around.folder === undefined ? undefined : { uri: fake.Uri.parse(around.folder) },
    },
    extensions: { getExtension: () => around.git },
  };
});

const job = Uri.parse('file:/shop/jobs/door.paneljob') as unknown as vscode.Uri;
const repository = { rootUri: Uri.parse('file:/shop') };

function git(api: object, enabled = true): object {
  return { isActive: true, exports: { enabled, getAPI: () => api } };
}

beforeEach(() => {
  Object.assign(around, { git: undefined, folder: undefined });
});

/** What is said where no repository is found. */
async function sentence(): Promise<string> {
  const found = await repositoryOf(job);
  return found.ok ? '' : found.message;
}

describe('repositoryOf', () => {
  test('the repository that VS Code has opened around the job', async () => {
    around.git = git({ getRepository: () => repository });
    expect(await repositoryOf(job)).toEqual({ ok: true, repository });
  });

  test('a git extension that sleeps is woken', async () => {
    const { exports } = git({ getRepository: () => repository }) as { exports: object };
    around.git = { isActive: false, activate: () => Promise.resolve(exports) };
    expect(await repositoryOf(job)).toEqual({ ok: true, repository });
  });

  test('a repository that is not open yet is opened by the folder of the workspace', async () => {
    const asked: string[] = [];
    around.folder = 'file:/shop';
    around.git = git({
      getRepository: () => null,
      openRepository: (root: Uri) => {
        asked.push(root.path);
        return Promise.resolve(repository);
      },
    });
    expect(await repositoryOf(job)).toEqual({ ok: true, repository });
    expect(asked).toEqual(['/shop']);
  });

  test('no git, git switched off, no repository and a fault are four sentences, each with a way out', async () => {
    expect(await sentence()).toMatch(/^There is no git here: .*Compare with File\.$/);
    around.git = git({}, false);
    expect(await sentence()).toMatch(/^Git is switched off in the settings \(git\.enabled\)\. Two/);
    around.git = git({ getRepository: () => null });
    expect(await sentence()).toMatch(
      /^This job is in no git repository that VS Code has open\. Two/,
    );
    around.git = { isActive: false, activate: () => Promise.reject(new Error('no such program')) };
    expect(await sentence()).toMatch(/^Git cannot be asked: no such program/);
  });
});

describe('commitTime', () => {
  test('a commit’s time is told by the clock on the wall, not by that of Greenwich', () => {
    const about = { hash: 'a', message: '', authorDate: new Date(2026, 10, 25, 14, 5) };
    expect(commitTime(about)).toBe('2026-11-25 14:05');
    expect(commitTime({ hash: 'a', message: '' })).toBe('');
  });
});

describe('textAt', () => {
  const shown = (show: GitRepository['show']): GitRepository =>
    ({ show }) as unknown as GitRepository;
  const file = { fsPath: '/shop/jobs/door.paneljob' } as unknown as vscode.Uri;

  test('the text of the file in a revision', async () => {
    const found = shown((ref, path) => Promise.resolve(`${ref}:${path}`));
    expect(await textAt(found, 'HEAD', file)).toBe('HEAD:/shop/jobs/door.paneljob');
  });

  test('nothing where the revision or the file is not there', async () => {
    const none = shown(() => Promise.reject(new Error('fatal: bad revision')));
    expect(await textAt(none, 'HEAD', file)).toBeUndefined();
  });
});
