import { afterEach, describe, expect, onTestFinished, test, vi } from 'vitest';
import { workedOut } from '../../extension/engine/session/worked-out.ts';
import type { HeavyHand } from '../../extension/host/heavy-hand.ts';
import { JobDesk } from '../../extension/host/job-desk.ts';
import { unpackRows } from '../../extension/protocol/packing.ts';
import { editor, workspace } from '../helpers/fake-vscode.ts';
import {
  bench,
  closeDesks,
  openDesk as open,
  sentOf,
  testPanel,
  typed,
} from '../helpers/open-desk.ts';
import { doorPair, replaced } from '../helpers/sample-session.ts';

// A real job is opened each time.
vi.setConfig({ testTimeout: 60_000 });

afterEach(closeDesks);

describe('show', () => {
  test('a grid is sent the job, then every sheet’s rows', async () => {
    const { panel } = await open();
    const [shown] = sentOf(panel, 'shown');
    expect(shown?.job.state).toBe('ready');
    const parts = sentOf(panel, 'rows').find(({ table }) => table === 'part');
    expect(unpackRows(parts?.rows ?? '').map(({ id }) => id)).toContain('mid_ring');
  });
});

describe('edit', () => {
  test('one gesture is one edit of the workspace, told to the grid that asked', async () => {
    const { desk, panel, on } = await open();
    const reply = await desk.edit(panel, 7, [
      typed('mid_ring', 'tilt', '20'),
      typed('gloves', 'qty', '12'),
    ]);
    expect(reply).toMatchObject({ ok: true });
    expect(editor.edits).toHaveLength(1);
    expect(on.document.getText()).toContain('tilt = "20 deg"\nturn');
    expect(on.document.getText()).toContain('qty = 12');
    expect(sentOf(panel, 'patch').map(({ cause }) => cause)).toEqual([7]);
  });

  test('fifty gestures fired without waiting all land, in order', async () => {
    const { desk, on } = await open();
    const replies = Array.from({ length: 50 }, (_, index) =>
      desk.edit(undefined, undefined, [typed('gloves', 'name', `Gloves ${String(index)}`)]),
    );
    expect((await Promise.all(replies)).every(({ ok }) => ok)).toBe(true);
    expect(on.document.getText()).toContain('name = "Gloves 49"');
    const written = editor.edits.map(({ replacements }) => replacements[0]?.text);
    expect(written).toEqual(Array.from({ length: 50 }, (_, index) => `"Gloves ${String(index)}"`));
    expect(desk.snapshot().reading.text).toBe(on.document.getText());
  });

  test('an edit that VS Code refuses is rolled back and told', async () => {
    const { desk, panel, on } = await open();
    editor.accepts = false;
    const reply = await desk.edit(panel, 1, [typed('mid_ring', 'tilt', '20')]);
    expect(reply).toMatchObject({ ok: false, message: /could not be changed/ });
    expect(on.document.getText()).toBe(doorPair);
    expect(desk.snapshot().reading.text).toBe(doorPair);
    const last = sentOf(panel, 'patch').at(-1);
    const ring = unpackRows(last?.rows ?? '').find(({ id }) => id === 'mid_ring');
    expect(ring?.cells.map(({ typed: text }) => text)).toContain('15 deg');
  });

  test('an edit that another change overtook is done on the text that it left', async () => {
    const { desk, panel, on } = await open();
    const undone = replaced(doorPair, 'turn = "47 deg"', 'turn = "40 deg"');
    const overtake = vi.spyOn(workspace, 'applyEdit');
    onTestFinished(() => {
      overtake.mockRestore();
    });
    // VS Code undid something meanwhile, and refuses an edit of the text before; then tells of it.
    overtake.mockImplementationOnce(() => {
      setTimeout(() => {
        on.document.write(undone);
      }, 30);
      return Promise.resolve(false);
    });
    const reply = await desk.edit(panel, 4, [typed('mid_ring', 'tilt', '20')]);
    expect(reply).toMatchObject({ ok: true });
    const both = replaced(undone, 'tilt = "15 deg"', 'tilt = "20 deg"');
    expect(on.document.getText()).toBe(both);
    expect(desk.snapshot().reading.text).toBe(both);
  });

  test('an edit that fails outright is told like a refused one', async () => {
    const { desk, on } = await open();
    editor.documents = [];
    const reply = await desk.edit(undefined, undefined, [typed('mid_ring', 'tilt', '20')]);
    expect(reply.ok).toBe(false);
    expect(desk.snapshot().reading.text).toBe(on.document.getText());
  });

  test('a text that cannot be taken changes nothing and gives its sentence and cell', async () => {
    const { desk } = await open();
    const reply = await desk.edit(undefined, undefined, [typed('mid_ring', 'depth', '3 floz')]);
    expect(reply).toMatchObject({ ok: false, cell: { id: 'mid_ring', column: 'depth' } });
    expect(editor.edits).toEqual([]);
  });

  test('a folder that cannot be written takes no edit', async () => {
    const { desk } = await open();
    editor.writable.set('file', false);
    const reply = await desk.edit(undefined, undefined, [typed('mid_ring', 'tilt', '20')]);
    expect(reply).toMatchObject({ ok: false, message: /read-only/ });
    expect(await desk.editFile([{ kind: 'set-head', key: 'units', text: 'mm' }])).toMatchObject({
      ok: false,
    });
  });
});

describe('documentChanged', () => {
  test('typing in the text view moves the grid, and undo moves it back', async () => {
    const { desk, panel, on } = await open();
    on.document.write(replaced(doorPair, 'tilt = "15 deg"', 'tilt = "18 deg"'));
    expect(sentOf(panel, 'patch')).toHaveLength(1);
    expect(sentOf(panel, 'patch')[0]?.cause).toBeUndefined();
    on.document.write(doorPair);
    expect(sentOf(panel, 'patch')).toHaveLength(2);
    expect(desk.snapshot().reading.text).toBe(doorPair);
  });

  test('conflict markers lock the grid and lift again', async () => {
    const { desk, panel, on } = await open();
    on.document.write(`${doorPair}<<<<<<< a\n=======\n>>>>>>> b\n`);
    expect(sentOf(panel, 'shown').at(-1)?.job.state).toBe('conflicted');
    const reply = await desk.edit(undefined, undefined, [typed('mid_ring', 'tilt', '20')]);
    expect(reply).toMatchObject({ ok: false, message: /conflict markers/ });
    on.document.write(doorPair);
    expect(sentOf(panel, 'shown').at(-1)?.job.state).toBe('ready');
  });

  test('what is worked out when conflict markers come is worked out once, and is there afterwards', async () => {
    const on = bench();
    const worked: string[] = [];
    const started: (() => void)[] = [];
    const hand: HeavyHand = {
      work: async (question) => {
        worked.push(question.key);
        await new Promise<void>((go) => started.push(go));
        return workedOut(question);
      },
      drop: () => undefined,
      dispose: () => undefined,
    };
    const desk = await JobDesk.open(on.asked, { ...on.services, hand: () => hand });
    onTestFinished(() => {
      desk.dispose();
    });
    await expect.poll(() => started.length, { timeout: 30_000 }).toBe(1);
    on.document.write(`${doorPair}<<<<<<< a\n=======\n>>>>>>> b\n`);
    desk.documentChanged();
    await expect
      .poll(
        () => {
          for (const go of started.splice(0)) go();
          return desk.snapshot().heavy;
        },
        { timeout: 30_000 },
      )
      .toEqual([]);
    expect(new Set(worked).size).toBe(worked.length);
    expect(desk.snapshot().reading.state).toBe('conflicted');
    on.document.write(doorPair);
    desk.documentChanged();
    expect(desk.snapshot().heavy).toEqual([]);
  });

  test('a grid that is not ready is sent nothing', async () => {
    const { desk, on } = await open();
    const late = testPanel();
    desk.panels.add(late);
    on.document.write(replaced(doorPair, 'qty = 10', 'qty = 11'));
    on.document.write(replaced(doorPair, 'units = "in"', 'units = "mm"'));
    expect(late.sent).toEqual([]);
  });
});

describe('the shop book', () => {
  test('a changed book changes the prices', async () => {
    const { desk, panel, on } = await open();
    const before = desk.snapshot().bill.totals.charge;
    on.book.write(on.book.getText().replaceAll(/price = "(\d)/g, 'price = "9$1'));
    await desk.fileChanged(on.book.uri as never);
    expect(desk.snapshot().bill.totals.charge).toBeGreaterThan(before);
    expect(sentOf(panel, 'shown')).toHaveLength(2);
    await desk.fileChanged(on.document.uri as never);
    expect(sentOf(panel, 'shown')).toHaveLength(2);
  });

  test('a job that names another book in the grid gets it', async () => {
    const { desk } = await open();
    expect(desk.snapshot().book.origin).toBe('file');
    await desk.edit(undefined, undefined, [typed('book', 'value', '', 'job')]);
    await expect.poll(() => desk.snapshot().book.origin, { timeout: 30_000 }).toBe('demo');
    await desk.edit(undefined, undefined, [
      typed('book', 'value', 'books/demo-shop.panelbook', 'job'),
    ]);
    await expect.poll(() => desk.snapshot().book.origin, { timeout: 30_000 }).toBe('file');
  });

  test('a book that is not there leaves the demo book', async () => {
    const { desk } = await open(replaced(doorPair, 'books/demo-shop', 'books/nowhere'));
    expect(desk.snapshot().book.origin).toBe('demo');
  });
});

describe('diagnostics', () => {
  test('a problem stands at its text with a link to its cell', async () => {
    const text = replaced(doorPair, 'price = "18.50 USD"', 'price = "=1in + 2qt"');
    const { on } = await open(text);
    const all = on.diagnostics.get(on.document.uri.toString()) ?? [];
    const found = all.find(({ message }) => message.includes('cannot be added'));
    const line = text.slice(0, text.indexOf('=1in')).split('\n').length - 1;
    expect(found?.range.start.line).toBe(line);
    const { target } = found?.code as { target: { path: string } };
    const [, argument = ''] = target.path.split('?');
    expect(JSON.parse(decodeURIComponent(argument))).toEqual([
      {
        uri: 'file:/jobs/door.paneljob',
        table: 'part',
        id: 'freight',
        occurrence: 0,
        column: 'price',
      },
    ]);
  });

  test('a setting’s problem leads to its row in the sheet of settings', async () => {
    const { desk, on } = await open(replaced(doorPair, '"68 degF"', '"68"'));
    const all = on.diagnostics.get(on.document.uri.toString()) ?? [];
    const codes = all.map(({ code }) => decodeURIComponent(JSON.stringify(code)));
    expect(codes.join()).toContain('temperature');
    desk.dispose();
    expect(on.diagnostics.size).toBe(0);
  });
});

describe('knobs', () => {
  test('effects follow after a pause', async () => {
    const { panel } = await open();
    expect(sentOf(panel, 'shown')[0]?.job.knobs.map(({ effect }) => effect)).toContain('');
    await expect
      .poll(
        () =>
          sentOf(panel, 'patch')
            .at(-1)
            ?.knobs?.every(({ effect }) => effect !== ''),
        {
          timeout: 30_000,
        },
      )
      .toBe(true);
  });
});
