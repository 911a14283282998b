import { describe, expect, test, vi } from 'vitest';
import { conflictAnswer, isOfConflicts } from '../../../extension/host/merging/conflicts.ts';
import { editor } from '../../helpers/fake-vscode.ts';
import { bench, type Bench } from '../../helpers/open-desk.ts';
import { smallJob } from '../../helpers/test-world.ts';

/** What git keeps of the version that both came from; undefined where VS Code has no git. */
const kept = vi.hoisted((): { before: string | undefined } => ({ before: undefined }));

vi.mock('vscode', async (original) => ({
  ...(await original<object>()),
  extensions: {
    getExtension: () =>
      kept.before === undefined
        ? undefined
        : {
            isActive: true,
            exports: {
              enabled: true,
              getAPI: () => ({
                getRepository: () => ({ show: () => Promise.resolve(kept.before) }),
              }),
            },
          },
  },
}));

vi.setConfig({ testTimeout: 60_000 });

const size = 'shape = "rect(24in, 12in)"\n';
const text = smallJob.replace(
  size,
  '<<<<<<< HEAD\nshape = "rect(48in, 12in)"\n=======\nshape = "rect(24in, 24in)"\n>>>>>>> shop\n',
);

function opened(before?: string): Bench {
  kept.before = before;
  return bench(text);
}

const key = 'part/board#0/shape';

describe('conflictAnswer', () => {
  test('lists each cell in conflict with what both sides hold; what was before is not known', async () => {
    const view = await conflictAnswer({ ask: 'conflicts' }, opened().asked);
    expect(view).toMatchObject({
      conflicts: [
        {
          key,
          title: 'Board (board): shape',
          base: undefined,
          baseKnown: false,
          ours: 'rect(48in, 12in)',
          theirs: 'rect(24in, 24in)',
          choices: ['ours', 'theirs'],
        },
      ],
    });
  });

  test('where git keeps the version before, that is told too', async () => {
    const view = await conflictAnswer({ ask: 'conflicts' }, opened(smallJob).asked);
    expect(view).toMatchObject({ conflicts: [{ base: 'rect(24in, 12in)', baseKnown: true }] });
  });

  test('a setting, a place on the screen and a row without a name are told in the grid’s words', async () => {
    const both = (ours: string, theirs: string): string =>
      `<<<<<<< HEAD\n${ours}\n=======\n${theirs}\n>>>>>>> shop\n`;
    const file = smallJob
      .replace('units = "in"\n', both('units = "in"', 'units = "mm"'))
      .replace(size, `${size}\n${both('order = 1000', 'order = 2000')}`)
      .replace('name = "Freight"\n', '')
      .replace('price = "18.50 USD"\n', both('price = "18 USD"', 'price = "19 USD"'));
    kept.before = undefined;
    const view = await conflictAnswer({ ask: 'conflicts' }, bench(file).asked);
    expect(JSON.stringify(view)).toMatch(
      /"Job: units".*"Board \(board\): place on the screen".*"freight: price"/,
    );
  });

  test('says what the job comes to on each side', async () => {
    const totals = await conflictAnswer({ ask: 'conflict-totals', key }, opened().asked);
    expect(totals).toMatchObject([{ choice: 'ours' }, { choice: 'theirs' }]);
    expect(JSON.stringify(totals)).toMatch(/"materials":"\d+\.\d\d USD"/);
    const none = await conflictAnswer({ ask: 'conflict-totals', key: 'no such' }, opened().asked);
    expect(none).toEqual([]);
  });

  test('with another shop book the sides come to something else', async () => {
    const on = opened();
    const totals = (): Promise<unknown> =>
      conflictAnswer({ ask: 'conflict-totals', key }, on.asked);
    const before = await totals();
    expect(await totals()).toEqual(before);
    const named = on.document
      .getText()
      .replace('units = ', 'book = "books/demo-shop.panelbook"\nunits = ');
    on.document.write(named);
    await totals();
    on.book.write(on.book.getText().replaceAll(/price = "(\d)/g, 'price = "9$1'));
    expect(await totals()).not.toEqual(before);
  });

  test('a choice is one edit of the file, and every other letter stays', async () => {
    const on = opened();
    const reply = await conflictAnswer({ ask: 'settle', choices: { [key]: 'theirs' } }, on.asked);
    expect(reply).toMatchObject({ ok: true });
    expect(editor.edits).toHaveLength(1);
    expect(on.document.getText()).toBe(smallJob.replace(size, 'shape = "rect(24in, 24in)"\n'));
  });

  test('where the file takes no edit it says so', async () => {
    const on = opened();
    editor.accepts = false;
    const reply = await conflictAnswer({ ask: 'settle', choices: { [key]: 'ours' } }, on.asked);
    expect(reply).toMatchObject({ ok: false });
    expect(on.document.getText()).toBe(text);
  });

  test('only its own questions are answered here', () => {
    expect(isOfConflicts({ ask: 'conflicts' })).toBe(true);
    expect(isOfConflicts({ ask: 'asks' })).toBe(false);
  });
});
