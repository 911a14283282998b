import { describe, expect, test } from 'vitest';
import type { ToWebview } from '../../extension/protocol/messages.ts';
import { packRows } from '../../extension/protocol/packing.ts';
import { State } from '../../webview/state.ts';
import { fakeRows, rowView } from './page/fake-job.ts';
import { jobView, sheetView } from './page/fake-views.ts';

const rows = fakeRows(4);
const tilt = { key: 'tilt', index: 5 };
const tiltOf = { table: 'part', id: 'ring_1', occurrence: 0, column: 'tilt' };

function opened(): State {
  const state = new State();
  state.apply({ type: 'shown', revision: 1, job: jobView(rows) });
  state.apply({ type: 'rows', revision: 1, table: 'part', rows: packRows(rows.map(rowView)) });
  return state;
}

function patch(revision: number, cause: number | undefined, text: string): ToWebview {
  const row = rows.find((one) => one.id === 'ring_1');
  if (row === undefined) throw new Error('The fake job has no ring_1.');
  const changed = rowView({ ...row, cells: { ...row.cells, tilt: text } });
  return { type: 'patch', revision, cause, sheets: [], rows: packRows([changed]) };
}

describe('State', () => {
  test('a typed text is seen at once and gives way to the patch that it caused', () => {
    const state = opened();
    state.echo(7, [{ cell: tiltOf, text: '20' }]);
    expect(state.cell('part', 'ring_1', tilt).shown).toBe('20');
    state.apply(patch(2, 7, '20 deg'));
    expect(state.cell('part', 'ring_1', tilt).shown).toBe('20 deg');
  });

  test('a later typing is not undone by the patch of an earlier one', () => {
    const state = opened();
    state.echo(7, [{ cell: tiltOf, text: '20' }]);
    state.echo(8, [{ cell: tiltOf, text: '21' }]);
    state.apply(patch(2, 7, '20 deg'));
    expect(state.cell('part', 'ring_1', tilt).shown).toBe('21');
  });

  test('a refused text goes back to what the file holds', () => {
    const state = opened();
    state.echo(7, [{ cell: tiltOf, text: '48.50 EUR' }]);
    state.settle(7);
    expect(state.cell('part', 'ring_1', tilt).shown).toBe('15 deg');
  });

  test('an edit acknowledged before its patch keeps its echo until that revision is here', () => {
    const state = opened();
    state.echo(7, [{ cell: tiltOf, text: '20' }]);
    state.acknowledge(7, 2);
    expect(state.cell('part', 'ring_1', tilt).shown).toBe('20');
    state.apply(patch(2, undefined, '20 deg'));
    expect(state.cell('part', 'ring_1', tilt).shown).toBe('20 deg');
  });

  test('an older patch and older rows change nothing', () => {
    const state = opened();
    state.apply(patch(5, undefined, '5 deg'));
    expect(state.apply(patch(4, undefined, '4 deg'))).toBeUndefined();
    state.apply({ type: 'rows', revision: 1, table: 'part', rows: packRows(rows.map(rowView)) });
    expect(state.cell('part', 'ring_1', tilt).shown).toBe('5 deg');
  });

  test('rows that are not here yet are waited for', () => {
    const state = new State();
    state.apply({ type: 'shown', revision: 1, job: jobView(rows) });
    expect(state.cell('part', 'ring_1', tilt).look).toBe('waiting');
  });

  test('totals that come first leave what needs a look as it was', () => {
    const state = opened();
    const figures = (): readonly string[] =>
      (state.job?.headline.figures ?? []).map(({ key, value }) => `${key} ${value}`);
    const [looked] = figures().filter((one) => one.startsWith('problems'));
    const charge = {
      key: 'charge',
      label: 'Materials',
      value: '$9',
      change: '',
      tone: 'plain',
    } as const;
    const headline = { title: 'Doors', figures: [charge], notes: [] };
    const told = { type: 'patch', cause: undefined, sheets: [], rows: '', headline } as const;
    state.apply({ ...told, revision: 2, part: 'totals' });
    expect(figures()).toEqual(['charge $9', looked]);
    state.apply({ ...told, revision: 2, part: 'rest' });
    expect(figures()).toEqual(['charge $9']);
  });

  test('a sheet that comes alone replaces its own view only', () => {
    const state = opened();
    const fewer = rows.filter((row) => row.id !== 'ring_1');
    const changes = state.apply({
      type: 'patch',
      revision: 2,
      cause: undefined,
      sheets: [sheetView('part', fewer)],
      rows: '',
    });
    expect([...(changes?.tables ?? [])]).toEqual(['part']);
    expect(state.sheet('part')?.order).not.toContain('ring_1');
    expect(state.sheet('driver')?.order).toEqual(['mid']);
    expect(state.row('part', 'ring_1')).toBeUndefined();
  });

  test('new totals of the groups need no new sheet', () => {
    const state = opened();
    const groups = [{ group: 'structure', label: 'Structure', totals: 'charge $9.00' }];
    const changes = state.apply({
      type: 'patch',
      revision: 2,
      cause: undefined,
      sheets: [],
      rows: '',
      groups: [{ table: 'part', groups }],
    });
    expect(state.sheet('part')?.groups).toEqual(groups);
    expect(changes?.tables.has('part')).toBe(true);
  });

  test('only a job that can be written takes edits', () => {
    const state = new State();
    expect(state.editable).toBe(false);
    state.apply({ type: 'shown', revision: 1, job: jobView(rows, 'conflicted') });
    expect(state.editable).toBe(false);
    state.apply({ type: 'shown', revision: 2, job: jobView(rows, 'empty') });
    expect(state.editable).toBe(true);
  });
});
