import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { moneyText, openSession } from '../../../extension/engine/index.ts';
import { showCellHistory } from '../../../extension/host/compare/cell-history.ts';
import { commit, gitWorld, newGitWorld, type FakeCommit } from '../../helpers/fake-git.ts';
import { closeDesks, deskOf } from '../../helpers/open-desk.ts';
import { demoBook } from '../../helpers/sample-session.ts';
import { smallJob } from '../../helpers/test-world.ts';

vi.mock('vscode', async (original) => {
  const { withGit } = await import('../../helpers/fake-git.ts');
  return withGit(await original());
});

vi.setConfig({ testTimeout: 60_000 });

const path = '/jobs/door.paneljob';
const bookPath = '/jobs/books/demo-shop.panelbook';
const job = smallJob.replace('units = ', 'book = "books/demo-shop.panelbook"\nunits = ');

function sized(length: number): string {
  return job.replace('rect(24in, 12in)', `rect(${String(length)}in, 12in)`);
}

const shape = { table: 'part', id: 'board', occurrence: 0, column: 'shape' };
/** Everything cost ten times as much when the job was quoted. */
const dearBook = demoBook.replaceAll(/price = "(\d+)/g, 'price = "$10');

const quoted = commit(1, 'Quote the shelf\n\nAs drawn.', {
  [path]: sized(24),
  [bookPath]: dearBook,
});
const freight = commit(2, 'Raise the freight', {
  [path]: sized(24).replace('18.50 USD', '21 USD'),
  [bookPath]: demoBook,
});
const widened = commit(
  3,
  'Widen it',
  { [path]: sized(30), [bookPath]: demoBook },
  'Demo Upholsterer',
);

beforeEach(() => {
  newGitWorld();
  gitWorld.commits = [widened, freight, quoted];
});

afterEach(closeDesks);

/** Lines of the list that is shown for a cell of a job. */
async function lines(text: string, cell = shape): Promise<readonly string[]> {
  await showCellHistory(await deskOf(text), cell);
  return gitWorld.lists[0]?.lines ?? [];
}

function priceWith(text: string, book: string): string {
  const { totals, currency } = openSession(text, book).snapshot().price;
  return moneyText(totals.price, currency);
}

describe('showCellHistory', () => {
  test('lists the commits that changed the cell, newest first, with price, day, author and subject', async () => {
    expect(await lines(sized(30))).toEqual([
      `rect(30in, 12in) | ${priceWith(sized(30), demoBook)} | 2026-11-03 14:05 Demo Upholsterer 0303030303: Widen it`,
      `rect(24in, 12in) | ${priceWith(sized(24), dearBook)} | 2026-11-01 14:05 Demo Estimator 0101010101: Quote the shelf`,
    ]);
    expect(gitWorld.lists[0]?.title).toBe('History of board.shape: choose a value to compare with');
  });

  test('the price of a version is that of its own shop book', () => {
    expect(priceWith(sized(24), dearBook)).not.toBe(priceWith(sized(24), demoBook));
  });

  test('what was typed since stands first and belongs to no commit', async () => {
    const [first, second] = await lines(sized(36));
    expect(first).toMatch(/^rect\(36in, 12in\) \| [\d,.]+ USD \| Not committed yet$/);
    expect(second).toMatch(/^rect\(30in, 12in\) .* Widen it$/);
  });

  test('a cell that was emptied is listed as blank', async () => {
    const emptied = sized(30).replace('shape = "rect(30in, 12in)"\n', '');
    expect((await lines(emptied))[0]).toMatch(/^\(blank\) \| .* \| Not committed yet$/);
  });

  test('a setting has a history too', async () => {
    gitWorld.commits = [
      commit(2, 'In millimetres', { [path]: job.replace('units = "in"', 'units = "mm"') }),
      commit(1, 'Quote the shelf', { [path]: job }),
    ];
    const units = { table: 'job', id: 'units', occurrence: 0, column: 'value' };
    const told = await lines(job.replace('units = "in"', 'units = "mm"'), units);
    expect(told.map((line) => line.split(' | ')[0])).toEqual(['mm', 'in']);
    expect(gitWorld.lists[0]?.title).toContain('History of job.units');
  });

  test('the version of a value that is chosen is given back to compare with', async () => {
    gitWorld.choices = ['rect(24in'];
    expect(await showCellHistory(await deskOf(sized(30)), shape)).toMatchObject({
      against: '0101010101',
      text: sized(24),
      book: dearBook,
    });
  });

  test('what is not committed yet and a list that is closed give nothing to compare with', async () => {
    gitWorld.choices = ['rect(36in'];
    expect(await showCellHistory(await deskOf(sized(36)), shape)).toBeUndefined();
    expect(await showCellHistory(await deskOf(sized(36)), shape)).toBeUndefined();
    expect(gitWorld.lists).toHaveLength(2);
  });

  test('a cell that never held anything is told in a sentence instead of an empty list', async () => {
    const note = { ...shape, column: 'note' };
    expect(await showCellHistory(await deskOf(sized(30)), note)).toBeUndefined();
    expect(gitWorld.said).toEqual(['board.note says nothing, in none of its commits.']);
    expect(gitWorld.lists).toEqual([]);
  });

  test('who cancels sees what was found until then', async () => {
    gitWorld.cancels = true;
    expect(await lines(sized(36))).toEqual(['rect(36in, 12in) |  | Not committed yet']);
  });

  test('of very many values the newest 25 have a price', async () => {
    const many = Array.from({ length: 30 }, (_, index): FakeCommit =>
      commit(30 - index, 'Try', { [path]: sized(60 - index) }),
    );
    gitWorld.commits = many;
    const told = await lines(sized(60));
    expect(told).toHaveLength(30);
    expect(told.filter((line) => line.includes(' USD | '))).toHaveLength(25);
    expect(told.at(-1)).toMatch(/^rect\(31in, 12in\) \| {2}\| /);
  });

  test('where VS Code has no git it says what is missing', async () => {
    gitWorld.hasGit = false;
    expect(await showCellHistory(await deskOf(sized(30)), shape)).toBeUndefined();
    expect(gitWorld.said.join()).toMatch(/^There is no git here: .*Compare with File\.$/);
    expect(gitWorld.lists).toEqual([]);
  });
});
