import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  previewChangeOrder,
  writeChangeOrder,
} from '../../../extension/host/compare/change-order.ts';
import type { JobDesk } from '../../../extension/host/job-desk.ts';
import { commit, gitWorld, newGitWorld } from '../../helpers/fake-git.ts';
import { Uri, workspace } from '../../helpers/fake-vscode.ts';
import { closeDesks, deskOf } from '../../helpers/open-desk.ts';
import { smallJob } from '../../helpers/test-world.ts';

vi.mock('vscode', async (original) => {
  const { withGit } = await import('../../helpers/fake-git.ts');
  return withGit(await original());
});

vi.setConfig({ testTimeout: 60_000 });

const path = '/jobs/door.paneljob';
const longer = smallJob.replace('rect(24in, 12in)', 'rect(30in, 12in)');
const quoted = commit(1, 'Quote the shelf', { [path]: smallJob });
const written = Uri.parse('file:/jobs/door-change-order.html');

beforeEach(async () => {
  newGitWorld();
  gitWorld.commits = [quoted];
  await workspace.fs.writeFile(written, new Uint8Array());
});

afterEach(closeDesks);

function open(text = longer): Promise<JobDesk> {
  return deskOf(text);
}

describe('previewChangeOrder', () => {
  test('asks what was agreed to, which commit that is and whose copy is wanted', async () => {
    gitWorld.choices = ['Revision…', 'Quote the shelf', 'Client’s copy'];
    await previewChangeOrder(await open());
    expect(gitWorld.lists.map(({ title }) => title)).toEqual([
      'Preview Change Order: What Was Agreed To',
      'Compare with Revision',
      'Preview Change Order: Copy',
    ]);
    const [page] = gitWorld.pages;
    expect(page?.title).toBe('Change order: door.paneljob');
    expect(page?.html).toContain('0101010101 Quote the shelf');
    expect(page?.html).toContain('Board: shape 30 in × 12 in, was 24 in × 12 in.');
  });

  test('HEAD and a branch are asked of git as well', async () => {
    gitWorld.refs = [{ name: 'agreed', hash: quoted.hash }];
    gitWorld.choices = ['HEAD', 'Client’s copy', 'Branch or tag…', 'agreed', 'Client’s copy'];
    const desk = await open();
    await previewChangeOrder(desk);
    await previewChangeOrder(desk);
    const [head, branch] = gitWorld.pages.map(({ html }) => html);
    expect(head).toContain('HEAD');
    expect(branch).toContain('agreed');
    expect(branch).toContain('was 24 in × 12 in');
  });

  test('hours are on the shop’s copy and not on the client’s', async () => {
    gitWorld.choices = ['HEAD', 'Client’s copy', 'HEAD', 'Shop’s copy'];
    const desk = await open();
    await previewChangeOrder(desk);
    await previewChangeOrder(desk);
    expect(gitWorld.pages.map(({ html }) => html.includes('Hours'))).toEqual([false, true]);
  });

  test.each([
    ['the list of states', []],
    ['the list of commits', ['Revision…']],
    ['the list of copies', ['HEAD']],
  ])('who closes %s is shown nothing', async (_, choices) => {
    gitWorld.choices = [...choices];
    await previewChangeOrder(await open());
    expect(gitWorld.lists).toHaveLength(choices.length + 1);
    expect(gitWorld.pages).toEqual([]);
  });

  test('an agreed state that cannot be read as a job is told, and no empty page opens', async () => {
    const torn = `${smallJob}<<<<<<< a\n=======\n>>>>>>> b\n`;
    gitWorld.commits = [commit(1, 'Merge badly', { [path]: torn })];
    gitWorld.choices = ['HEAD', 'Client’s copy'];
    await previewChangeOrder(await open());
    expect(gitWorld.errors).toHaveLength(1);
    expect(gitWorld.pages).toEqual([]);
  });

  test('where VS Code has no git it says what is missing and asks no further', async () => {
    gitWorld.hasGit = false;
    gitWorld.choices = ['HEAD', 'Client’s copy'];
    await previewChangeOrder(await open());
    expect(gitWorld.said.join()).toMatch(/^There is no git here: /);
    expect(gitWorld.lists).toHaveLength(1);
    expect(gitWorld.pages).toEqual([]);
  });
});

describe('writeChangeOrder', () => {
  const html = async (): Promise<string> =>
    new TextDecoder().decode(await workspace.fs.readFile(written));

  test('writes the order beside the job and says where', async () => {
    gitWorld.choices = ['HEAD', 'Client’s copy', 'HTML'];
    await writeChangeOrder(await open());
    expect(await html()).toContain('was 24 in × 12 in');
    expect(gitWorld.said).toEqual(['Change order written to /jobs/door-change-order.html.']);
    expect(gitWorld.lists[0]?.title).toBe('Write Change Order: What Was Agreed To');
  });

  test('of a state that cannot be read as a job no file is written', async () => {
    gitWorld.commits = [commit(1, 'Merge badly', { [path]: '<<<<<<< a\n=======\n>>>>>>> b\n' })];
    gitWorld.choices = ['HEAD', 'Client’s copy', 'HTML'];
    await writeChangeOrder(await open());
    expect(await html()).toBe('');
    expect(gitWorld.errors).toHaveLength(1);
  });
});
