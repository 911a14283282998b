import type * as vscode from 'vscode';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { Desks } from '../../extension/host/desks.ts';
import type { JobDesk } from '../../extension/host/job-desk.ts';
import type { Question } from '../../extension/protocol/messages.ts';
import { editor } from '../helpers/fake-vscode.ts';
import { bench, sentOf, testPanel, type Bench, type TestPanel } from '../helpers/open-desk.ts';

interface Grid {
  readonly desks: Desks;
  readonly desk: JobDesk;
  readonly panel: TestPanel;
  readonly on: Bench;
  readonly sum: { text: string };
}

// A real job is opened each time.
vi.setConfig({ testTimeout: 60_000 });

const opened: JobDesk[] = [];

afterEach(() => {
  for (const desk of opened.splice(0)) desk.dispose();
});

async function grid(): Promise<Grid> {
  const on = bench();
  const sum = { text: '', show: () => undefined, hide: () => undefined };
  const desks = new Desks(on.services, sum as unknown as vscode.StatusBarItem);
  const desk = await desks.desk(on.asked);
  opened.push(desk);
  const panel = testPanel();
  desks.attach(desk, panel);
  await desks.receive(desk, panel, { type: 'ready' });
  return { desks, desk, panel, on, sum };
}

const ring = { table: 'part', id: 'mid_ring', occurrence: 0 };
const tilt = { ...ring, column: 'tilt' };

describe('receive', () => {
  test('every question gets exactly one reply', async () => {
    const { desks, desk, panel } = await grid();
    const questions: readonly Question[] = [
      { ask: 'edit', revision: 1, edits: [{ kind: 'type', cell: tilt, text: '20' }] },
      { ask: 'card', row: ring },
      { ask: 'card', row: { ...ring, id: 'gone' } },
      { ask: 'choices', cell: { ...ring, column: 'on' } },
      { ask: 'complete', cell: tilt, text: '=dri', caret: 4 },
      { ask: 'where-from', line: 'fleece' },
      { ask: 'where-from-cell', cell: tilt },
      { ask: 'kit', kit: 'panel', row: undefined },
      { ask: 'kit-preview', kit: 'panel', answers: { id: 'rear' } },
    ];
    for (const [request, question] of questions.entries())
      await desks.receive(desk, panel, { type: 'ask', request, question });
    expect(sentOf(panel, 'reply').map(({ request }) => request)).toEqual([...questions.keys()]);
  });

  test('a question that goes wrong is refused and logged, so nothing waits for ever', async () => {
    const { desks, desk, panel, on } = await grid();
    const question = { ask: 'card' } as unknown as Question;
    await desks.receive(desk, panel, { type: 'ask', request: 3, question });
    expect(sentOf(panel, 'refused')).toMatchObject([{ request: 3 }]);
    expect(on.log).toHaveLength(1);
    const broken = { type: 'selection' } as never;
    await desks.receive(desk, panel, broken);
    expect(on.log).toHaveLength(2);
  });

  test('a save that follows an edit takes it along', async () => {
    const { desks, desk, panel, on } = await grid();
    const edits = [{ kind: 'type', cell: tilt, text: '20' }] as const;
    const question = { ask: 'edit', revision: 1, edits } as const;
    await Promise.all([
      desks.receive(desk, panel, { type: 'ask', request: 1, question }),
      desks.receive(desk, panel, { type: 'save' }),
    ]);
    expect(on.document.saved).toContain('tilt = "20 deg"');
  });

  test('a step of a knob is an edit', async () => {
    const { desks, desk, panel, on } = await grid();
    await desks.receive(desk, panel, { type: 'step-knob', knob: tilt, by: 1 });
    expect(on.document.getText()).toContain('tilt = "16 deg"');
  });

  test('a step that is refused says why', async () => {
    const { desks, desk, panel } = await grid();
    editor.accepts = false;
    await desks.receive(desk, panel, { type: 'step-knob', knob: tilt, by: 1 });
    expect(editor.warnings).toMatchObject([/could not be changed/]);
  });

  test('a pinned cell joins the suggested knobs and can be taken out', async () => {
    const { desks, desk, panel } = await grid();
    const cell = { ...ring, id: 'gloves', column: 'qty' };
    await desks.receive(desk, panel, { type: 'pin', cell, pinned: true });
    expect(desk.pinned()).toContain('part/gloves#0/qty');
    await desks.receive(desk, panel, { type: 'pin', cell, pinned: false });
    expect(desk.pinned()).not.toContain('part/gloves#0/qty');
  });

  test('the sum of a selection is told to the grid and the status bar', async () => {
    const { desks, desk, panel, sum } = await grid();
    const rows = [ring, { ...ring, id: 'twt_ring' }];
    await desks.receive(desk, panel, { type: 'selection', table: 'part', rows, columns: ['tilt'] });
    expect(sum.text).toBe('Sum 35 deg · mean 17.5 deg · 2 values');
    expect(sentOf(panel, 'sum').at(-1)?.text).toBe(sum.text);
  });

  test('commands of the page are the extension’s own', async () => {
    const { desks, desk, panel, on } = await grid();
    await desks.receive(desk, panel, { type: 'command', name: 'openAsText', line: 12 });
    expect(editor.commands).toContainEqual(['panelwright.openAsText', on.document.uri, 12]);
    await desks.receive(desk, panel, { type: 'cursor', cell: tilt, editing: false });
    expect(editor.commands).toContainEqual(['setContext', 'panelwright.gridFocus', true]);
  });
});

describe('focus', () => {
  test('a cell is focused in the open grid', async () => {
    const { desks, panel, on } = await grid();
    await desks.focus(on.asked.uri, tilt);
    expect(sentOf(panel, 'focus-cell')).toMatchObject([{ cell: tilt }]);
  });
});

describe('attach', () => {
  test('a job whose last grid is closed is given up, with its problems', async () => {
    const { desks, panel, on } = await grid();
    panel.close();
    expect(desks.known(on.asked.uri)).toBeUndefined();
    expect(on.diagnostics.size).toBe(0);
    expect(desks.active).toBeUndefined();
  });
});
