import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { Session, Snapshot } from '../../../extension/engine/index.ts';
import { billView } from '../../../extension/host/views/bill-view.ts';
import { cardView } from '../../../extension/host/views/card-view.ts';
import { headlineNotes } from '../../../extension/host/views/headline-view.ts';
import { jobView } from '../../../extension/host/views/job-view.ts';
import { patchOf, type Patch } from '../../../extension/host/views/patch.ts';
import { sheetContext, type SheetContext } from '../../../extension/host/views/sheet-context.ts';
import { rowView, sheetView } from '../../../extension/host/views/sheet-view.ts';
import { unpackRows } from '../../../extension/protocol/packing.ts';
import type { CellView, JobView } from '../../../extension/protocol/views.ts';
import { demoBook, doorPair, doorSession, replaced } from '../../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let session: Session;
let snapshot: Snapshot;
let context: SheetContext;

beforeAll(() => {
  session = doorSession();
  snapshot = session.snapshot();
  context = sheetContext(snapshot);
});

function answered(id: string, of = context, table = 'part') {
  const row = of.snapshot.workbook.rows(table).find((one) => one.id === id);
  if (row === undefined) throw new Error(`There is no row ${id}`);
  return row;
}

function cell(id: string, column: string, of = context, table = 'part'): CellView | undefined {
  const at = (of.columns.get(table) ?? []).findIndex(({ key }) => key === column);
  return rowView(answered(id, of, table), of).cells[at];
}

describe('rowView', () => {
  test('typed, default, computed and blank cells look different', () => {
    expect(cell('mid_ring', 'tilt')).toMatchObject({ look: 'typed', shown: '15 deg' });
    expect(cell('mid_ring', 'need')).toMatchObject({ look: 'computed', typed: '' });
    expect(cell('mid_baffle', 'thickness')?.look).toBe('default');
    expect(cell('gloves', 'turn')?.look).toBe('blank');
  });

  test('a formula shows its value and keeps its text', () => {
    const depth = cell('mid_ring', 'depth');
    expect(depth).toMatchObject({ formula: true, look: 'typed' });
    expect(depth?.typed).toMatch(/^=ROUNDUPTO/);
    expect(depth?.shown).toMatch(/ in$/);
  });

  test('kinds and materials are shown by name, and counts and percents as they are spelt', () => {
    expect(cell('mid_ring', 'kind')).toMatchObject({ shown: 'Bent ring', typed: 'ring' });
    expect(cell('door_skin', 'material')?.shown).toBe('Fleece, 60 in');
    expect(cell('door_soak', 'percent')?.shown).toBe('2 %');
  });

  test('a cell without answer says why, and a broken row is locked', () => {
    const text = replaced(doorPair, '"18.50 USD"', '"=1in + 2qt"').replace(
      'name = "Gloves"',
      'name = Gloves',
    );
    const broken = sheetContext(doorSession(text).snapshot());
    expect(cell('freight', 'price', broken)).toMatchObject({ look: 'error', severity: 'error' });
    expect(rowView(answered('gloves', broken), broken)).toMatchObject({ locked: true });
    expect(rowView(answered('gloves', broken), broken).message).toMatch(/locked/);
  });
});

describe('sheetView', () => {
  test('parts stand group after group with totals, and every row once', () => {
    const sheet = sheetView('part', context);
    expect(sheet.groups.map(({ group }) => group)).toEqual([
      'structure',
      'skin',
      'finish',
      'drivers',
      'shop',
    ]);
    expect(sheet.groups.every(({ totals }) => totals.startsWith('charge '))).toBe(true);
    const groups = sheet.order.map((id) => rowView(answered(id), context).group);
    const order = sheet.groups.map(({ group }) => group);
    const places = groups.map((group) => order.indexOf(group));
    expect(places).toEqual([...places].sort((one, two) => one - two));
    expect(new Set(sheet.order).size).toBe(30);
  });

  test('the main size is told in words', () => {
    expect(cell('door_base', 'words')?.shown).toMatch(/26 in/);
  });
});

function view(of: Session): JobView {
  const made = of.snapshot();
  const parts = { context: sheetContext(made), baseline: made, knobs: [], lock: undefined };
  return jobView(parts);
}

describe('jobView', () => {
  test('a job without rows offers kits', () => {
    const empty = view(doorSession('format = 1\n\n[job]\ntitle = "New"\n'));
    expect(empty.state).toBe('empty');
    expect(empty.kits.map(({ id }) => id)).toContain('panel');
  });

  test('a newer file is read-only, a torn one conflicted', () => {
    expect(view(doorSession(replaced(doorPair, 'format = 1', 'format = 9'))).state).toBe(
      'read-only',
    );
    const torn = doorSession();
    torn.setText(`${doorPair}<<<<<<< a\n=======\n>>>>>>> b\n`);
    const seen = view(torn);
    expect(seen).toMatchObject({ state: 'conflicted', line: doorPair.split('\n').length });
    expect(seen.sheets.find(({ table }) => table === 'part')?.order).toContain('mid_ring');
  });

  test('a setting’s problem stands at its row of the settings sheet', () => {
    const bare = view(doorSession(replaced(doorPair, '"68 degF"', '"68"')));
    expect(bare.problems.find(({ table }) => table === 'job')).toMatchObject({
      row: 'temperature',
      column: 'value',
    });
  });
});

function patch(before: string, after: string): Omit<Patch, 'cause'> {
  const own = doorSession();
  const was = sheetContext(own.snapshot());
  const baseline = own.snapshot();
  const change = own.setText(replaced(doorPair, before, after));
  const now = sheetContext(own.snapshot());
  return patchOf({ before: was, after: now, change, baseline, knobs: [], revision: 2 });
}

describe('patchOf', () => {
  test('a note changes its row and no money', () => {
    const sent = patch('name = "Gloves"', 'name = "Nitrile gloves"');
    expect(unpackRows(sent.rows).map(({ id }) => id)).toContain('gloves');
    expect(unpackRows(sent.rows).length).toBeLessThan(4);
    expect(sent.sheets).toEqual([]);
  });

  test('money that moves on other rows brings them, the bill and the group totals', () => {
    const sent = patch('tilt = "15 deg"', 'tilt = "25 deg"');
    expect(sent.bill?.groups.flatMap(({ lines }) => lines).some(({ fresh }) => fresh)).toBe(true);
    expect(sent.groups?.[0]?.table).toBe('part');
    const ids = unpackRows(sent.rows).map(({ id }) => id);
    expect(ids).toContain('mid_ring');
    expect(ids).not.toContain('gloves');
  });

  test('a row that goes brings its sheet in its new order', () => {
    const start = doorPair.indexOf('[[part]]\nid = "gloves"');
    const gone = doorPair.slice(start, doorPair.indexOf('[[part]]', start + 1));
    const sheet = patch(gone, '').sheets.find(({ table }) => table === 'part');
    expect(sheet?.order).not.toContain('gloves');
  });

  test('settings are sent when one of them changed', () => {
    const sent = patch('client = "Demo client"', 'client = "Another"');
    const rows = unpackRows(sent.rows);
    expect(rows.find(({ id }) => id === 'client')?.cells[1]?.shown).toBe('Another');
  });
});

describe('billView', () => {
  test('groups add up to the totals and nothing has changed at opening', () => {
    const bill = billView(snapshot, snapshot, undefined);
    expect(bill).toMatchObject({ change: '' });
    expect(bill.groups.flatMap(({ lines }) => lines).every(({ change }) => change === '')).toBe(
      true,
    );
    const sum = snapshot.bill.groups.reduce((total, { charge }) => total + charge, 0);
    expect(sum).toBe(snapshot.bill.totals.charge);
  });

  test('a line without price is counted in the note', () => {
    const pack = /\[\[pack\]\]\n(?:(?!\[\[)[\s\S])*?material = "fleece"(?:(?!\[\[)[\s\S])*/g;
    const own = doorSession();
    own.setBook(demoBook.replace(pack, ''));
    const { bill } = own.snapshot();
    expect(bill.totals.incomplete).toBeGreaterThan(0);
    expect(headlineNotes(own.snapshot()).join('; ')).toMatch(
      /Incomplete: \d+ lines? (has|have) no amount or no price yet/,
    );
    const lines = billView(own.snapshot(), own.snapshot(), undefined).groups.flatMap(
      (one) => one.lines,
    );
    expect(lines.find(({ id }) => id === 'fleece')?.problem).not.toBe('');
  });
});

describe('cardView', () => {
  test('lists own columns, results, draws and amounts of a row', () => {
    const card = cardView(answered('door_soak'), context, new Set(['part/door_soak#0/percent']));
    expect(card).toMatchObject({ title: 'First coat, into the cloth', kind: 'Resin' });
    expect(card.fields.find(({ key }) => key === 'percent')?.pinned).toBe(true);
    expect(card.draws.map(({ name }) => name)).toEqual(['catalyst', 'pot', 'brush']);
    expect(card.amounts.length).toBeGreaterThan(1);
    expect(card.results.every(({ editor }) => editor === 'none')).toBe(true);
  });

  test('a length field names the unit that a bare number gets', () => {
    const card = cardView(answered('mid_ring'), context, new Set());
    expect(card.fields.find(({ key }) => key === 'depth')).toMatchObject({ unit: 'in' });
  });
});
