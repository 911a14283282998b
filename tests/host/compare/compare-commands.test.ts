import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { compareCommands } from '../../../extension/host/compare/compare-commands.ts';
import { Comparisons } from '../../../extension/host/compare/comparisons.ts';
import type { Desks } from '../../../extension/host/desks.ts';
import { JobDesk } from '../../../extension/host/job-desk.ts';
import type { CompareView } from '../../../extension/protocol/compare-view.ts';
import { commit, gitWorld, newGitWorld } from '../../helpers/fake-git.ts';
import { Uri, workspace } from '../../helpers/fake-vscode.ts';
import { bench, sentOf, testPanel, type TestPanel } from '../../helpers/open-desk.ts';
import { sourceText } from '../../helpers/source-files.ts';
import { smallJob } from '../../helpers/test-world.ts';

vi.mock('vscode', async (original) => {
  const { withGit } = await import('../../helpers/fake-git.ts');
  return withGit(await original());
});

vi.setConfig({ testTimeout: 60_000 });

const path = '/jobs/door.paneljob';
const longer = smallJob.replace('rect(24in, 12in)', 'rect(30in, 12in)');
const wider = smallJob.replace('rect(24in, 12in)', 'rect(24in, 16in)');
const shape = { table: 'part', id: 'board', occurrence: 0, column: 'shape' };

interface Opened {
  readonly desk: JobDesk;
  readonly panel: TestPanel;
  readonly comparisons: Comparisons;
  /** Names of the commands. */
  readonly names: readonly string[];
  /** Runs a command of the grid in front; what it was given stands behind its name. */
  readonly run: (name: string, file?: unknown) => Promise<void>;
  /** What the grid was told last: what it is compared with and what differs. */
  readonly shown: () => CompareView | undefined;
}

const opened: Opened[] = [];

beforeEach(() => {
  newGitWorld();
  gitWorld.commits = [
    commit(2, 'Widen it', { [path]: wider }),
    commit(1, 'Quote the shelf', { [path]: smallJob }),
  ];
});

afterEach(() => {
  for (const { desk, comparisons } of opened.splice(0)) {
    comparisons.dispose();
    desk.dispose();
  }
});

async function open(): Promise<Opened> {
  const on = bench(longer);
  const desk = await JobDesk.open(on.asked, on.services);
  const panel = testPanel();
  desk.panels.add(panel);
  desk.show(panel);
  const comparisons = new Comparisons(on.services);
  const desks = { active: { desk, panel } } as unknown as Desks;
  const commands = new Map(compareCommands(desks, comparisons, (_, work) => work(desk)));
  const all: Opened = {
    desk,
    panel,
    comparisons,
    names: [...commands.keys()],
    run: async (name, file) => commands.get(name)?.(undefined, file),
    shown: () => sentOf(panel, 'compare').at(-1)?.view,
  };
  opened.push(all);
  return all;
}

/** What the cells of the grid held in the version it is compared with. */
function told(view: CompareView | undefined): readonly string[] {
  return view?.changes.map((change) => `${change.place}: ${change.told}`) ?? [];
}

test('each command is in the manifest, under the same name', async () => {
  const { names } = await open();
  const manifest = JSON.parse(sourceText('package.json')) as {
    contributes: { commands: readonly { command: string }[] };
  };
  const known = manifest.contributes.commands.map(({ command }) => command);
  expect(known).toEqual(expect.arrayContaining(names.map((name) => `panelwright.${name}`)));
});

describe('what the job is compared with', () => {
  test('HEAD: the grid is told what differs from what was committed last', async () => {
    const { run, shown } = await open();
    await run('compareWithHead');
    expect(shown()?.against).toBe('HEAD');
    expect(told(shown())).toEqual(['Board: shape: was rect(24 in, 16 in)']);
  });

  test('a revision and a branch: the one that is chosen takes the place of the one before', async () => {
    gitWorld.refs = [{ name: 'quoted', hash: '01'.repeat(20) }];
    gitWorld.choices = ['Widen it', 'quoted'];
    const { run, shown } = await open();
    await run('compareWithRevision');
    expect(shown()?.against).toBe('0202020202 Widen it');
    await run('compareWithBranch');
    expect(shown()?.against).toBe('quoted');
    expect(told(shown())).toEqual(['Board: shape: was rect(24 in, 12 in)']);
  });

  test('a file: the one that came with the command is not asked for, else a dialog asks', async () => {
    const agreed = Uri.parse('file:/jobs/agreed.paneljob');
    await workspace.fs.writeFile(agreed, new TextEncoder().encode(smallJob));
    const { run, shown } = await open();
    await run('compareWithFile', agreed);
    expect(gitWorld.dialogs).toEqual([]);
    expect(shown()?.against).toBe('agreed.paneljob');
    await run('stopComparing');
    gitWorld.file = agreed;
    await run('compareWithFile');
    expect(gitWorld.dialogs).toHaveLength(1);
    expect(shown()?.against).toBe('agreed.paneljob');
  });

  test('a list or dialog that is closed leaves the comparison that stands', async () => {
    const { run, panel, shown } = await open();
    await run('compareWithHead');
    const count = sentOf(panel, 'compare').length;
    panel.cursor = shape;
    for (const name of ['compareWithRevision', 'compareWithFile', 'showCellHistory'])
      await run(name);
    expect(sentOf(panel, 'compare')).toHaveLength(count);
    expect(shown()?.against).toBe('HEAD');
  });

  test('where VS Code has no git nothing is compared, and it says so', async () => {
    gitWorld.hasGit = false;
    const { run, panel } = await open();
    await run('compareWithHead');
    expect(sentOf(panel, 'compare')).toEqual([]);
    expect(gitWorld.said.join()).toMatch(/^There is no git here: /);
  });
});

describe('Stop Comparing', () => {
  test('takes the marks away', async () => {
    const { run, shown, panel } = await open();
    await run('compareWithHead');
    await run('stopComparing');
    expect(shown()).toBeUndefined();
    expect(sentOf(panel, 'compare').length).toBeGreaterThan(1);
  });
});

describe('Show Cell History', () => {
  test('asks for a cell where the cursor is on none', async () => {
    const { run } = await open();
    await run('showCellHistory');
    expect(gitWorld.said).toEqual(['Put the cursor on a cell of the grid first.']);
    expect(gitWorld.lists).toEqual([]);
  });

  test('is that of the cell under the cursor; a value that is chosen is compared with', async () => {
    gitWorld.choices = ['rect(24in, 12in)'];
    const { run, panel, shown } = await open();
    panel.cursor = shape;
    await run('showCellHistory');
    expect(gitWorld.lists[0]?.title).toMatch(/^History of board\.shape/);
    expect(shown()?.against).toBe('0101010101');
    expect(told(shown())).toEqual(['Board: shape: was rect(24 in, 12 in)']);
  });
});
