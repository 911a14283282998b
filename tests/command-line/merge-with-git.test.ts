import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { run } from '../../extension/command-line/run.ts';
import { readFile } from '../../extension/engine/index.ts';
import { gitRepository, type GitRepository } from '../helpers/git-repository.ts';
import { buildMergeDriver } from '../helpers/merge-driver.ts';
import { chanceOf, cellTexts, randomBranch } from '../helpers/merge-pairs.ts';
import { mergeJobs } from '../../extension/engine/sharing/merge-jobs.ts';
import { sourceText } from '../helpers/source-files.ts';
import { processWorld } from '../../extension/command-line/files.ts';

const programs = mkdtempSync(join(tmpdir(), 'panelwright-driver-'));
const driver = join(programs, 'merge-driver.cjs');
const repositories: GitRepository[] = [];

beforeAll(() => {
  buildMergeDriver(driver);
});

afterAll(() => {
  for (const one of repositories) one.remove();
  rmSync(programs, { recursive: true, force: true });
});

const job = sourceText('sample-jobs/two-ring-door.paneljob');
const file = 'door.paneljob';

/** A repository with a job on `main`, in which merging has been set up by the program itself. */
function shop(): GitRepository {
  const made = gitRepository();
  repositories.push(made);
  const world = { ...processWorld(), driver, out: () => undefined };
  expect(run(['merge', '--set-up', made.folder, '--yes'], world)).toBe(0);
  made.commit(file, job, 'the job');
  return made;
}

/** Changes the text on a branch of its own and comes back to main. */
function branch(made: GitRepository, name: string, text: string): void {
  made.git('checkout', '-q', '-b', name, 'main');
  made.commit(file, text, name);
  made.git('checkout', '-q', 'main');
}

const tilted = job.replace(/^tilt = ".*"$/m, 'tilt = "17 deg"');
const deeper = job.replace(/^(tilt = ".*")$/m, '$1\nat_x = "1 in"');
const steeper = job.replace(/^tilt = ".*"$/m, 'tilt = "21 deg"');

describe('git with the merge driver', () => {
  test('merges cells on lines next to each other', () => {
    const made = shop();
    branch(made, 'tilt', tilted);
    made.commit(file, deeper, 'deeper');
    expect(made.git('merge', '-q', 'tilt').status).toBe(0);
    expect(made.read(file)).toBe(deeper.replace(/^tilt = ".*"$/m, 'tilt = "17 deg"'));
  });

  test('the same merge without it is a conflict', () => {
    const made = shop();
    made.git('config', '--remove-section', 'merge.panelwright');
    branch(made, 'tilt', tilted);
    made.commit(file, deeper, 'deeper');
    expect(made.git('merge', '-q', 'tilt').status).toBe(1);
  });

  test('rebases and cherry-picks', () => {
    const made = shop();
    branch(made, 'tilt', tilted);
    branch(made, 'picked', job.replace(/^client = .*$/m, 'client = "Another"'));
    made.commit(file, deeper, 'deeper');
    expect(made.git('cherry-pick', 'picked').status).toBe(0);
    made.git('checkout', '-q', 'tilt');
    expect(made.git('rebase', '-q', 'main').status).toBe(0);
    const cells = cellTexts(made.read(file));
    expect([cells.get('job/client'), made.read(file).includes('tilt = "17 deg"')]).toEqual([
      'Another',
      true,
    ]);
    expect(made.read(file)).toContain('at_x = "1 in"');
  });

  test('a cell changed on both branches stops the merge, with all three texts in the file', () => {
    const made = shop();
    branch(made, 'tilt', tilted);
    made.commit(file, steeper, 'steeper');
    const { status, out } = made.git('merge', 'tilt');
    expect(status).toBe(1);
    expect(out).toContain(`${file}: 1 conflict`);
    expect(made.git('status', '--short').out).toContain(`UU ${file}`);
    expect(made.read(file)).toMatch(
      /<<<<<<< ours\ntilt = "21 deg"\n\|{7} base\ntilt = ".*"\n=======\ntilt = "17 deg"\n>>>>>>> theirs\n/,
    );
  });

  test('two branches merged crosswise merge again, though git makes a base of its own', () => {
    const made = shop();
    branch(made, 'a', tilted);
    branch(made, 'b', deeper);
    made.git('checkout', '-q', 'a');
    expect(made.git('merge', '-q', 'b').status).toBe(0);
    made.git('checkout', '-q', 'b');
    expect(made.git('merge', '-q', 'main', 'a~1').status).toBe(0);
    made.commit(file, made.read(file).replace(/^client = .*$/m, 'client = "Another"'), 'client');
    made.git('checkout', '-q', 'a');
    expect(made.git('merge', '-q', 'b').status).toBe(0);
    expect(readFile(made.read(file)).head.get('client')?.text).toBe('Another');
  });

  test('git gives what the engine gives, branch for branch', () => {
    const made = shop();
    for (let seed = 1; seed <= 5; seed++) {
      const ours = randomBranch(job, chanceOf(seed * 2)).text;
      const theirs = randomBranch(job, chanceOf(seed * 2 + 1)).text;
      const main = `main-${String(seed)}`;
      branch(made, `theirs-${String(seed)}`, theirs);
      branch(made, main, ours);
      made.git('checkout', '-q', main);
      const { status } = made.git('merge', '-q', `theirs-${String(seed)}`);
      const merged = mergeJobs(job, ours, theirs);
      expect(made.read(file)).toBe(merged?.text);
      expect(status === 0).toBe(merged?.conflicts.length === 0);
      if (status !== 0) made.git('merge', '--abort');
      made.git('checkout', '-q', 'main');
    }
  });
});
