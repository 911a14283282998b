import type * as vscode from 'vscode';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import {
  chosenEarlier,
  earlierFile,
  type EarlierKind,
} from '../../../extension/host/compare/earlier.ts';
import { commit, gitWorld, newGitWorld } from '../../helpers/fake-git.ts';
import { editor, Uri, workspace } from '../../helpers/fake-vscode.ts';
import { smallJob } from '../../helpers/test-world.ts';

vi.mock('vscode', async (original) => {
  const { withGit } = await import('../../helpers/fake-git.ts');
  return withGit(await original());
});

const path = '/jobs/door.paneljob';
const bookPath = '/jobs/shop.panelbook';
const job = Uri.parse(`file:${path}`) as unknown as vscode.Uri;
const onBook = smallJob.replace('units = ', 'book = "shop.panelbook"\nunits = ');
const longer = onBook.replace('rect(24in, 12in)', 'rect(30in, 12in)');

const quoted = commit(1, 'Quote the shelf\n\nAs drawn.', { [path]: onBook, [bookPath]: '# then' });
const widened = commit(
  3,
  'Widen it',
  { [path]: longer, [bookPath]: '# later' },
  'Demo Upholsterer',
);

async function put(where: string, text: string): Promise<void> {
  await workspace.fs.writeFile(Uri.parse(`file:${where}`), new TextEncoder().encode(text));
}

beforeEach(async () => {
  newGitWorld();
  editor.documents = [];
  const onlyTheBook = commit(2, 'Raise the prices', { ...quoted.files, [bookPath]: '# raised' });
  gitWorld.commits = [widened, onlyTheBook, quoted];
  await put(bookPath, '# now');
});

describe('with HEAD', () => {
  test('the job as it was committed last, with its shop book as it was then', async () => {
    const earlier = await chosenEarlier('head', job);
    expect(earlier).toMatchObject({ against: 'HEAD', text: longer, book: '# later' });
    expect(gitWorld.said).toEqual([]);
  });

  test('a shop book that git does not keep is taken as it is now', async () => {
    gitWorld.commits = [commit(1, 'Quote the shelf', { [path]: onBook })];
    expect(await chosenEarlier('head', job)).toMatchObject({ text: onBook, book: '# now' });
  });

  test('a job without a shop book has none', async () => {
    gitWorld.commits = [commit(1, 'Quote the shelf', { [path]: smallJob, [bookPath]: '# then' })];
    expect(await chosenEarlier('head', job)).toMatchObject({ text: smallJob, book: undefined });
  });

  test('a job that was not committed yet is named in the sentence', async () => {
    gitWorld.commits = [commit(1, 'Something else', { '/jobs/other.paneljob': smallJob })];
    expect(await chosenEarlier('head', job)).toBeUndefined();
    expect(gitWorld.said).toEqual(['HEAD has no file door.paneljob to compare with.']);
  });
});

describe('with a revision', () => {
  test('lists the commits that changed this job, newest first, each with day, author and number', async () => {
    await chosenEarlier('revision', job);
    expect(gitWorld.lists).toEqual([
      {
        title: 'Compare with Revision',
        lines: [
          'Widen it | 2026-11-03 Demo Upholsterer | 0303030303',
          'Quote the shelf | 2026-11-01 Demo Estimator | 0101010101',
        ],
      },
    ]);
  });

  test('the one that is chosen is read and called by its number and subject', async () => {
    gitWorld.choices = ['Quote the shelf'];
    expect(await chosenEarlier('revision', job)).toMatchObject({
      against: '0101010101 Quote the shelf',
      text: onBook,
      book: '# then',
    });
  });

  test('who closes the list is told nothing', async () => {
    expect(await chosenEarlier('revision', job)).toBeUndefined();
    expect(gitWorld.said).toEqual([]);
  });

  test('where no commit has the job, a sentence stands instead of an empty list', async () => {
    gitWorld.commits = [];
    expect(await chosenEarlier('revision', job)).toBeUndefined();
    expect(gitWorld.said).toEqual(['No commit has this job yet.']);
    expect(gitWorld.lists).toEqual([]);
  });
});

describe('with a branch', () => {
  test('branches and tags are offered once each, and the one that is chosen is read', async () => {
    gitWorld.refs = [
      { name: 'main', hash: widened.hash },
      { name: 'quoted', hash: quoted.hash },
      { name: 'main', hash: widened.hash },
    ];
    gitWorld.choices = ['quoted'];
    expect(await chosenEarlier('branch', job)).toMatchObject({ against: 'quoted', text: onBook });
    expect(gitWorld.lists).toEqual([{ title: 'Compare with Branch', lines: ['main', 'quoted'] }]);
  });

  test('a branch without the job is named in the sentence', async () => {
    gitWorld.refs = [{ name: 'papers', hash: 'none' }];
    gitWorld.choices = ['papers'];
    expect(await chosenEarlier('branch', job)).toBeUndefined();
    expect(gitWorld.said).toEqual(['papers has no file door.paneljob to compare with.']);
  });

  test('a repository without branches says so', async () => {
    expect(await chosenEarlier('branch', job)).toBeUndefined();
    expect(gitWorld.said).toEqual(['This repository has no other branch or tag.']);
  });
});

describe('with a file', () => {
  const agreed = '/agreed/door-agreed.paneljob';

  test('the dialog opens where the job lies; the shop book is the one beside the file', async () => {
    await put(agreed, onBook);
    await put('/agreed/shop.panelbook', '# agreed');
    gitWorld.file = Uri.parse(`file:${agreed}`);
    expect(await chosenEarlier('file', job)).toMatchObject({
      against: 'door-agreed.paneljob',
      text: onBook,
      book: '# agreed',
    });
    expect(gitWorld.dialogs).toEqual(['Compare with File in /jobs']);
  });

  test('who closes the dialog is told nothing', async () => {
    expect(await chosenEarlier('file', job)).toBeUndefined();
    expect(gitWorld.said).toEqual([]);
  });

  test('a file that is not there is named in the sentence', async () => {
    const gone = Uri.parse('file:/jobs/gone.paneljob') as unknown as vscode.Uri;
    expect(await earlierFile(gone)).toBeUndefined();
    expect(gitWorld.said).toEqual(['gone.paneljob cannot be read.']);
  });
});

describe('where VS Code has no git', () => {
  test.each<EarlierKind>(['head', 'revision', 'branch'])(
    'asked for %s it says so, and names what can be done all the same',
    async (kind) => {
      gitWorld.hasGit = false;
      expect(await chosenEarlier(kind, job)).toBeUndefined();
      expect(gitWorld.said).toEqual([
        'There is no git here: a browser without a machine behind it has none. Two files can be compared all the same: Compare with File.',
      ]);
      expect(gitWorld.lists).toEqual([]);
    },
  );

  test('a file is compared with as ever', async () => {
    gitWorld.hasGit = false;
    await put('/jobs/copy.paneljob', smallJob);
    gitWorld.file = Uri.parse('file:/jobs/copy.paneljob');
    expect(await chosenEarlier('file', job)).toMatchObject({ against: 'copy.paneljob' });
    expect(gitWorld.said).toEqual([]);
  });
});
