import { afterEach, describe, expect, test, vi } from 'vitest';
import { Comparisons } from '../../../extension/host/compare/comparisons.ts';
import type { Earlier } from '../../../extension/host/compare/earlier.ts';
import { JobDesk } from '../../../extension/host/job-desk.ts';
import type { CompareView } from '../../../extension/protocol/compare-view.ts';
import { editor } from '../../helpers/fake-vscode.ts';
import { bench, sentOf, testPanel, type Bench, type TestPanel } from '../../helpers/open-desk.ts';
import { demoBook, doorPair, replaced } from '../../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000 });

/** The door pair as it was quoted, before its ring was leant further. */
const quoted: Earlier = {
  against: 'HEAD',
  text: doorPair,
  book: demoBook,
  outlines: new Map(),
};
const leant = replaced(doorPair, 'tilt = "15 deg"', 'tilt = "18 deg"');

interface Compared {
  readonly on: Bench;
  readonly desk: JobDesk;
  readonly panel: TestPanel;
  readonly comparisons: Comparisons;
}

const opened: Compared[] = [];

afterEach(() => {
  for (const { comparisons, desk } of opened.splice(0)) {
    comparisons.dispose();
    desk.dispose();
  }
});

async function compared(text = leant): Promise<Compared> {
  const on = bench(text);
  const desk = await JobDesk.open(on.asked, on.services);
  editor.hearers.add((document) => {
    if (document === on.document) desk.documentChanged();
  });
  const panel = testPanel();
  desk.panels.add(panel);
  desk.show(panel);
  const comparisons = new Comparisons(on.services);
  const all = { on, desk, panel, comparisons };
  opened.push(all);
  comparisons.start(desk, quoted);
  return all;
}

function views(panel: TestPanel): readonly (CompareView | undefined)[] {
  return sentOf(panel, 'compare').map(({ view }) => view);
}

/** The context keys that were set, which menus and keys ask for. */
function contexts(): readonly unknown[] {
  return editor.commands.filter(([name]) => name === 'setContext').map(([, , value]) => value);
}

describe('start', () => {
  test('every grid of the job is told what differs, and menus know that something is compared', async () => {
    const { panel } = await compared();
    const [view] = views(panel);
    expect(view?.against).toBe('HEAD');
    expect(view?.changes.map(({ place, told }) => [place, told])).toEqual([
      ['Midbass ring: lean', 'was 15 deg'],
    ]);
    expect(contexts().at(-1)).toBe(true);
  });

  test('another version takes the place of the one before', async () => {
    const { desk, panel, comparisons } = await compared();
    comparisons.start(desk, { ...quoted, against: 'main', text: leant });
    expect(views(panel).at(-1)).toMatchObject({ against: 'main', changes: [] });
  });

  test('a version that is no job is told in a sentence instead of a list', async () => {
    const { desk, panel, comparisons } = await compared();
    comparisons.start(desk, { ...quoted, text: '<<<<<<< HEAD\n=======\n>>>>>>> b\n' });
    expect(views(panel).at(-1)?.note).not.toBe('');
    expect(views(panel).at(-1)?.changes).toEqual([]);
  });
});

describe('when the job moves on', () => {
  test('what is put back is no change any more', async () => {
    const { on, panel } = await compared();
    on.document.write(doorPair);
    await expect.poll(() => views(panel).at(-1)?.changes, { timeout: 30_000 }).toEqual([]);
  });

  test('a shop book that is saved moves the figures', async () => {
    const { on, desk, panel } = await compared();
    const materials = (): string =>
      JSON.stringify(
        views(panel)
          .at(-1)
          ?.figures.map(({ after }) => after),
      );
    const before = materials();
    on.book.write(on.book.getText().replaceAll(/price = "(\d)/g, 'price = "9$1'));
    await desk.fileChanged(on.book.uri as never);
    await expect.poll(materials, { timeout: 30_000 }).not.toBe(before);
  });

  test('a job without a grid is not compared any longer', async () => {
    const { on, desk, panel } = await compared();
    desk.panels.delete(panel);
    on.document.write(doorPair);
    await expect.poll(() => contexts().at(-1), { timeout: 30_000 }).toBe(false);
    expect(desk.hearers.size).toBe(0);
  });
});

describe('greet', () => {
  test('a second grid of the job is told at once, one of a job that is not compared is not', async () => {
    const { desk, comparisons } = await compared();
    const second = testPanel();
    comparisons.greet(desk, second);
    expect(views(second).at(-1)?.changes).toHaveLength(1);
    comparisons.stop(desk);
    const third = testPanel();
    comparisons.greet(desk, third);
    expect(views(third)).toEqual([]);
  });
});

describe('stop', () => {
  test('the marks go, and what is typed later brings none back', async () => {
    const { on, desk, panel, comparisons } = await compared();
    comparisons.stop(desk);
    expect(views(panel).at(-1)).toBeUndefined();
    expect(contexts().at(-1)).toBe(false);
    const count = views(panel).length;
    on.document.write(doorPair);
    expect(desk.hearers.size).toBe(0);
    expect(views(panel)).toHaveLength(count);
  });
});
