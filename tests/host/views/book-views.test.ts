import { beforeAll, describe, expect, test, vi } from 'vitest';
import { openSession, type Session } from '../../../extension/engine/index.ts';
import { gestureEdits } from '../../../extension/host/gestures.ts';
import { cardView } from '../../../extension/host/views/card-view.ts';
import { jobView, tableRows } from '../../../extension/host/views/job-view.ts';
import { sheetContext, type SheetContext } from '../../../extension/host/views/sheet-context.ts';
import { demoBook } from '../../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let session: Session;
let context: SheetContext;

beforeAll(() => {
  session = openSession(demoBook);
  context = sheetContext(session.snapshot());
});

function view() {
  return jobView({ context, baseline: session.snapshot(), knobs: [], lock: undefined });
}

describe('a shop book in the grid', () => {
  test('has its own sheets, no kits to begin with and no bill', () => {
    const job = view();
    expect(job.form).toBe('book');
    expect(job.state).toBe('ready');
    expect(job.sheets.map(({ label }) => label)).toEqual([
      'Materials',
      'Packs and stock',
      'Suppliers',
      'Constants',
      'Kinds and rates',
      'Charts',
      'Kits',
      'Book',
    ]);
    expect(job.kits).toEqual([]);
    expect(job.bill.groups).toEqual([]);
    expect(job.problems).toEqual([]);
  });

  test('its headline counts what stands in it and says the day of its prices', () => {
    const { title, figures } = view().headline;
    expect(title).toBe('Demo shop');
    expect(figures.map(({ key, value }) => `${key} ${value}`)).toEqual([
      'materials 2',
      'packs 52',
      'day 2026-11-02',
      'problems nothing',
    ]);
  });

  test('shows only rows of the file, with prices as typed and what is built in lighter', () => {
    const packs = tableRows('pack', context);
    expect(packs).toHaveLength(52);
    const columns = context.columns.get('pack') ?? [];
    const at = columns.findIndex(({ key }) => key === 'price');
    const sheet = packs.find(({ id }) => id === 'board_sheet');
    expect(sheet?.cells[at]).toMatchObject({ typed: '18 USD', look: 'typed' });
  });

  test('the settings of the book are those of a book', () => {
    expect(tableRows('job', context).map(({ id }) => id)).toEqual([
      'title',
      'date',
      'currency',
      'units',
      'note',
    ]);
  });

  test('a kind shows the rates it gives, each in a column of its own', () => {
    const keys = (context.columns.get('kind') ?? []).map(({ key }) => key);
    expect(keys.filter((key) => key.includes('.')).length).toBeGreaterThan(0);
  });

  test('a price that is typed becomes one edit, completed with the currency', () => {
    const cell = { table: 'pack', id: 'board_sheet', occurrence: 0, column: 'price' };
    const gesture = gestureEdits(
      [{ kind: 'type', cell, text: '21.5' }],
      session.snapshot(),
      () => 'abc',
    );
    expect(gesture).toMatchObject({ ok: true, edits: [{ kind: 'set-cell', text: '21.5 USD' }] });
  });

  test('a row’s card has its fields with help, and no amounts', () => {
    const row = session.snapshot().workbook.row('pack', 'board_sheet');
    if (row === undefined) throw new Error('There is no pack board_sheet');
    const card = cardView(row, context, new Set());
    expect(card.fields.map(({ key }) => key)).toContain('have');
    expect(card.amounts).toEqual([]);
  });
});
