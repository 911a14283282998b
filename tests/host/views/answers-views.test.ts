import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { Session, Snapshot } from '../../../extension/engine/index.ts';
import { choicesFor } from '../../../extension/host/choices.ts';
import { kitPreview, kitView } from '../../../extension/host/kits.ts';
import { knobStepText, knobViews } from '../../../extension/host/knobs.ts';
import { completionView } from '../../../extension/host/views/completion-view.ts';
import { sumOfSelection } from '../../../extension/host/views/selection-sum.ts';
import { whereFromCell, whereFromLine } from '../../../extension/host/views/where-from-view.ts';
import { doorSession } from '../../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let session: Session;
let snapshot: Snapshot;

beforeAll(() => {
  session = doorSession();
  snapshot = session.snapshot();
});

function at(id: string, column: string, table = 'part') {
  return { table, id, occurrence: 0, column };
}

describe('choicesFor', () => {
  test('a choice offers its words, a link its rows, a kind the kinds of its table', () => {
    expect(choicesFor(at('mid_ring', 'build'), snapshot).map(({ label }) => label)).toEqual([
      '(blank)',
      'round baffle',
      'round tube',
      'square wall',
    ]);
    expect(choicesFor(at('mid_ring', 'taxed'), snapshot)).toHaveLength(3);
    const kinds = choicesFor(at('paperwork', 'kind', 'task'), snapshot).map(({ value }) => value);
    expect(kinds).toContain('sand');
    expect(kinds).not.toContain('ring');
  });

  test('a row is offered what its kind may stand on, never itself', () => {
    const on = choicesFor(at('mid_baffle', 'on'), snapshot).map(({ value }) => value);
    expect(on).toEqual(['', 'mid_ring', 'twt_ring']);
  });

  test('the material of a draw may be chosen; a length may not', () => {
    const all = choicesFor(at('door_soak', 'draw.catalyst.material'), snapshot);
    expect(all.map(({ value }) => value)).toContain('catalyst');
    expect(choicesFor(at('mid_ring', 'depth'), snapshot)).toEqual([]);
  });
});

describe('kitView and kitPreview', () => {
  test('a kit offers the row under the cursor', () => {
    const row = { table: 'part', id: 'twt_ring', occurrence: 0 };
    const ring = kitView('aim', row, snapshot).questions.find(({ key }) => key === 'ring');
    expect(ring).toMatchObject({ type: 'choice', start: 'twt_ring' });
    expect(kitView('aim', undefined, snapshot).questions).not.toEqual([]);
    expect(kitView('nothing', undefined, snapshot).questions).toEqual([]);
  });

  test('the preview lists the rows, or what is wrong with an answer', () => {
    const good = { id: 'rear', name: 'Rear door', shape: 'rect(20 in, 12 in)' };
    expect(kitPreview('panel', good, snapshot).rows.length).toBeGreaterThan(1);
    const bad = kitPreview('panel', { ...good, shape: 'egg' }, snapshot);
    expect(bad.rows).toEqual([]);
    expect(bad.problems['shape']).toBeDefined();
  });
});

describe('knobViews', () => {
  test('a knob tells its value, its step and what the step does to the money', () => {
    const place = at('mid_ring', 'tilt');
    const [quick] = knobViews([place], snapshot, []);
    expect(quick).toMatchObject({ value: '15 deg', step: '16 deg', effect: '' });
    const [full] = knobViews([place], snapshot, [], session.whatIf);
    expect(full?.effect).toMatch(/USD|no change in money/);
    expect(full?.check).toMatch(/^Off-axis to the far ear: .+ to spare$/);
    expect(knobStepText(place, -1, snapshot)).toBe('14 deg');
    expect(knobViews([at('gone', 'tilt')], snapshot, [])).toEqual([]);
  });
});

describe('completionView', () => {
  function complete(text: string, cell = at('mid_ring', 'depth')) {
    return completionView({ ask: 'complete', cell, text, caret: text.length }, snapshot);
  }

  test('names and functions are offered with what the text comes to', () => {
    expect(
      complete('=RING.')
        .items.map(({ label }) => label)
        .join(),
    ).toContain('RING.DEPTH');
    expect(complete('=driver.depth + 1/4in').preview).toBe('3 in');
    expect(complete('=driver.depth + 1qt').preview).toMatch(/cannot be added/);
    expect(complete('=MAX(1in, ').signature?.name).toBe('MAX');
  });

  test('a text that is no formula needs no help', () => {
    expect(complete('3 in')).toEqual({
      start: 0,
      end: 0,
      items: [],
      signature: undefined,
      preview: '',
    });
  });
});

describe('whereFrom', () => {
  test('a bill line tells each row’s amount and how it is bought', () => {
    const view = whereFromLine('fleece', snapshot);
    expect(view.title).toMatch(/^Fleece, 60 in: charge /);
    expect(view.steps.some(({ row }) => row === 'door_skin')).toBe(true);
    expect(whereFromLine('gone', snapshot).steps).toEqual([]);
  });

  test('a cell tells its text and the cells it reads', () => {
    const view = whereFromCell(at('mid_ring', 'depth'), snapshot);
    expect(view.steps[0]?.text).toMatch(/ROUNDUPTO.*\(typed\)$/);
    expect(view.steps.map(({ row, column }) => `${row}.${column}`)).toContain('mid.depth');
  });

  test('a charge tells its amounts, a setting its text', () => {
    expect(whereFromCell(at('door_skin', 'charge'), snapshot).steps).not.toEqual([]);
    expect(whereFromCell(at('temperature', 'value', 'job'), snapshot).title).toBe(
      'job.temperature: 68 degF',
    );
    expect(whereFromCell(at('gone', 'depth'), snapshot).steps).toEqual([]);
  });
});

describe('sumOfSelection', () => {
  function sum(ids: readonly string[], columns: readonly string[]): string {
    const rows = ids.map((id) => ({ table: 'part', id, occurrence: 0 }));
    return sumOfSelection({ type: 'selection', table: 'part', rows, columns }, snapshot);
  }

  test('values of one dimension are added', () => {
    expect(sum(['mid_ring', 'twt_ring'], ['tilt'])).toBe('Sum 35 deg · mean 17.5 deg · 2 values');
    expect(sum(['mid_ring', 'twt_ring'], ['charge'])).toMatch(/^Sum [\d.]+ USD · 2 rows$/);
  });

  test('unlike values are counted only, and one alone says nothing', () => {
    expect(sum(['mid_ring'], ['tilt', 'depth'])).toBe('2 values of different dimensions');
    expect(sum(['mid_ring'], ['tilt'])).toBe('');
  });
});
