import { afterEach, describe, expect, test, vi } from 'vitest';
import { compareOptions, openSession } from '../../extension/engine/index.ts';
import { JobDesk } from '../../extension/host/job-desk.ts';
import { optionsInSlices } from '../../extension/host/in-slices.ts';
import { addOption } from '../../extension/host/options.ts';
import { optionsView } from '../../extension/host/views/options-view.ts';
import type { OptionsView } from '../../extension/protocol/options-view.ts';
import { exportWorkbook } from '../../extension/host/workbook-file.ts';
import { editor, window, workspace } from '../helpers/fake-vscode.ts';
import { bench, testPanel, type Bench } from '../helpers/open-desk.ts';
import { doorPair } from '../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000 });

interface Item {
  readonly label: string;
  readonly description?: string;
  readonly detail?: string;
}

const told: string[] = [];
const shown: { readonly items: readonly Item[]; readonly title: string }[] = [];

/** A person who types these answers one after the other and takes the first line of each list. */
function person(answers: readonly string[]): void {
  told.length = 0;
  shown.length = 0;
  const left = [...answers];
  Object.assign(window, {
    showInformationMessage: (message: string) => Promise.resolve(told.push(message)),
    showInputBox: () => Promise.resolve(left.shift()),
    showQuickPick: (items: readonly Item[], { title }: { readonly title: string }) => {
      shown.push({ items, title });
      return Promise.resolve(items[0]);
    },
  });
}

const opened: JobDesk[] = [];

afterEach(() => {
  for (const desk of opened.splice(0)) desk.dispose();
});

async function open(): Promise<{ readonly desk: JobDesk; readonly on: Bench }> {
  const on = bench(doorPair);
  const desk = await JobDesk.open(on.asked, on.services);
  opened.push(desk);
  editor.hearers.add((document) => {
    if (document === on.document) desk.documentChanged();
  });
  return { desk, on };
}

async function viewOf(desk: JobDesk): Promise<OptionsView> {
  return optionsView(await optionsInSlices(desk, 0), desk.snapshot());
}

type Desks = Parameters<typeof addOption>[1];

const tilt = { table: 'part', id: 'mid_ring', occurrence: 0, column: 'tilt' };

function deskIn(desk: JobDesk, cursor = tilt): Desks {
  const panel = testPanel();
  panel.cursor = cursor;
  return { active: { desk, panel } } as unknown as Desks;
}

describe('options', () => {
  test('a cell becomes an option, is compared, and is taken into the job', async () => {
    const { desk, on } = await open();
    person(['22 deg', 'Leans further']);
    await addOption(desk, deskIn(desk));
    expect(on.document.getText()).toContain('set.mid_ring.tilt = "22 deg"');
    expect(on.document.getText()).toContain('tilt = "15 deg"');
    const view = await viewOf(desk);
    expect(view.options[0]).toMatchObject({
      name: 'Leans further',
      problem: '',
      cells: [{ name: expect.stringMatching(/: /) as string, now: '15 deg', then: '22 deg' }],
    });
    const price = view.figures.find(({ label }) => label === 'Price before tax');
    expect(price?.then[0]?.change).toMatch(/^[+−]/);
    const row = { table: 'option', id: view.options[0]?.id ?? '', occurrence: 0 };
    const reply = await desk.edit(undefined, undefined, [{ kind: 'accept-option', row }]);
    expect(reply.ok).toBe(true);
    const again = await desk.edit(undefined, undefined, [{ kind: 'accept-option', row }]);
    expect(again).toMatchObject({ ok: false, message: 'That option is gone already.' });
    expect(on.document.getText()).toContain('tilt = "22 deg"');
    expect(on.document.getText()).not.toContain('[[option]]');
  });

  test('a setting becomes one by its name', async () => {
    const { desk, on } = await open();
    person(['EUR', 'In euros']);
    const currency = { table: 'job', id: 'currency', occurrence: 0, column: 'value' };
    await addOption(desk, deskIn(desk, currency));
    expect(on.document.getText()).toContain('set.job.currency = "EUR"');
  });

  test('a job without options says how to make one', async () => {
    const { desk } = await open();
    expect((await viewOf(desk)).message).toContain('Add option from cell');
  });

  test('one that cannot be written into the job says why, and a job that never rests says that', () => {
    const broken = openSession(
      'format = 1\n\n[[option]]\nid = "odd"\n\nname = "Odd"\n\nset.job.units = "cubit"\n',
    );
    const compared = compareOptions(broken);
    expect(optionsView(compared, broken.snapshot()).options[0]?.name).toBe('Odd');
    expect(optionsView(undefined, broken.snapshot()).message).toContain('when it rests');
  });
});

describe('exportWorkbook', () => {
  test('writes a zip beside the job', async () => {
    const { desk } = await open();
    person([]);
    const written: Uint8Array[] = [];
    vi.spyOn(workspace.fs, 'writeFile').mockImplementation((_, bytes) => {
      written.push(bytes);
      return Promise.resolve();
    });
    await exportWorkbook(desk);
    expect([...(written[0] ?? []).slice(0, 2)]).toEqual([0x50, 0x4b]);
    expect(told[0]).toContain('.xlsx');
  });
});
