import { afterEach, describe, expect, test, vi } from 'vitest';
import { JobDesk } from '../../extension/host/job-desk.ts';
import { updateRates } from '../../extension/host/rates.ts';
import { actualsView } from '../../extension/host/views/actuals-view.ts';
import { editor, window } from '../helpers/fake-vscode.ts';
import { bench, type Bench } from '../helpers/open-desk.ts';
import { doorPair, replaced } from '../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000 });

const told: string[] = [];
const opened: JobDesk[] = [];

async function open(text: string): Promise<{ readonly desk: JobDesk; readonly on: Bench }> {
  told.length = 0;
  Object.assign(window, {
    showInformationMessage: (message: string) => Promise.resolve(told.push(message)),
  });
  const on = bench(text);
  const desk = await JobDesk.open(on.asked, on.services);
  opened.push(desk);
  return { desk, on };
}

afterEach(() => {
  for (const desk of opened.splice(0)) desk.dispose();
});

describe('updateRates', () => {
  test('asked for in a job it opens the job’s shop book and goes on there', async () => {
    const { desk, on } = await open(doorPair);
    await updateRates(desk);
    const [opening, going] = editor.commands;
    expect(opening?.slice(0, 2)).toMatchObject(['vscode.openWith', on.book.uri]);
    expect(going).toMatchObject(['panelwright.updateRates', on.book.uri]);
    expect(told).toEqual([]);
  });

  test('a job on the built-in book, or on one that is not there, says so', async () => {
    const line = 'book = "books/demo-shop.panelbook"\n';
    const { desk } = await open(replaced(doorPair, line, ''));
    await updateRates(desk);
    expect(told[0]).toContain('built-in demo book');
    const other = await open(replaced(doorPair, line, 'book = "books/gone.panelbook"\n'));
    await updateRates(other.desk);
    expect(told[0]).toContain('gone.panelbook, cannot be read');
    expect(editor.commands).toEqual([]);
  });
});

describe('actualsView', () => {
  test('has every task and part with the cell that an actual is typed into', async () => {
    const { desk } = await open(
      replaced(doorPair, 'minutes = "360 min"\n', 'minutes = "360 min"\n\nactual = "5 h"\n'),
    );
    const view = actualsView(desk.context());
    const curing = view.tasks.find(({ cell }) => cell.id === 'door_curing');
    expect(curing).toMatchObject({
      cell: { table: 'task', column: 'actual' },
      estimated: '6 h',
      said: { typed: '5 h' },
      difference: '−1 h, −17 %',
      problem: '',
    });
    expect(view.said).toMatch(/^Told so far: 1 of \d+ tasks, 0 of \d+ parts\.$/);
    const parts = view.materials.map(({ cell }) => cell.column);
    expect(new Set(parts)).toEqual(new Set(['used']));
  });

  test('a job without rows says that there is nothing yet', async () => {
    const { desk } = await open('format = 1\n');
    expect(actualsView(desk.context()).message).toContain('nothing to hold against an actual yet');
  });
});
