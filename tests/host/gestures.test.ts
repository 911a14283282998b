import { beforeAll, describe, expect, test, vi } from 'vitest';
import type { Session, Snapshot } from '../../extension/engine/index.ts';
import { gestureEdits, type Gesture } from '../../extension/host/gestures.ts';
import type { GridEdit, RowAddress } from '../../extension/protocol/messages.ts';
import { doorPair, doorSession, replaced } from '../helpers/sample-session.ts';

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let session: Session;
let snapshot: Snapshot;

beforeAll(() => {
  session = doorSession();
  snapshot = session.snapshot();
});

function row(id: string, table = 'part', occurrence = 0): RowAddress {
  return { table, id, occurrence };
}

function type(id: string, column: string, text: string, table = 'part'): GridEdit {
  return { kind: 'type', cell: { ...row(id, table), column }, text };
}

function gesture(edits: readonly GridEdit[], of = snapshot): Gesture {
  return gestureEdits(edits, of, () => 'kfd');
}

/** Text of the job after the gesture; a refusal as its sentence. */
function after(edits: readonly GridEdit[], of = session): string {
  const made = gesture(edits, of.snapshot());
  if (!made.ok) return `✗ ${made.message}`;
  const planned = of.plan(made.edits);
  return planned.ok ? planned.value.text : `✗ ${planned.problem.message}`;
}

/** The block of a row in a text. */
function block(text: string, id: string): string {
  return text.split('\n[[').find((one) => one.includes(`\nid = "${id}"`)) ?? '';
}

describe('typing', () => {
  test('a cell is set as entries are stored', () => {
    expect(block(after([type('mid_ring', 'tilt', '20')]), 'mid_ring')).toContain('tilt = "20 deg"');
  });

  test('one text that cannot be taken is refused with its cell', () => {
    expect(gesture([type('mid_ring', 'depth', '3 floz')])).toMatchObject({
      ok: false,
      cell: { id: 'mid_ring', column: 'depth' },
    });
  });

  test('a paste keeps texts that cannot be read, and leaves results alone', () => {
    const text = after([
      type('mid_ring', 'depth', '3 floz'),
      type('mid_ring', 'tilt', '20'),
      type('mid_ring', 'charge', '12'),
    ]);
    expect(block(text, 'mid_ring')).toContain('depth = "3 floz"\ntilt = "20 deg"');
    expect(block(text, 'mid_ring')).not.toContain('charge');
  });

  test('a row of the settings sheet is a key of [job]', () => {
    const text = after([type('units', 'value', 'mm', 'job'), type('note', 'value', 'Hi', 'job')]);
    expect(text).toContain('units = "mm"');
    expect(text).toContain('note = "Hi"');
    expect(after([type('client', 'value', '', 'job')])).not.toContain('client =');
    expect(after([type('units', 'value', 'cm', 'job')])).toMatch(/^✗ units has no value/);
  });

  test('typing in the id column renames the row and its references, beside other cells', () => {
    const text = after([type('mid_ring', 'id', 'sub_ring'), type('mid_ring', 'name', 'Sub ring')]);
    expect(block(text, 'sub_ring')).toContain('name = "Sub ring"');
    expect(text).toContain('tilt = "=sub_ring.tilt"');
    expect(text).not.toContain('mid_ring');
  });

  test('an id that is taken, ill formed or blank is refused', () => {
    expect(after([type('mid_ring', 'id', 'mid')])).toMatch(/^✗ There is a row called mid already/);
    expect(after([type('mid_ring', 'id', 'Sub ring')])).toMatch(/^✗ .*cannot be an id/);
    expect(after([type('mid_ring', 'id', '')])).toMatch(/^✗ .*cannot be an id/);
  });
});

describe('inserting', () => {
  test('a new row stands on the row under the cursor where its kind fits', () => {
    const edit = {
      kind: 'insert',
      table: 'part',
      rowKind: 'baffle',
      after: row('twt_ring'),
    } as const;
    expect(block(after([edit]), 'kfd_baffle')).toContain('on = "twt_ring"');
    expect(gesture([edit])).toMatchObject({ focus: row('kfd_baffle') });
  });

  test('else it stands on the nearest fitting row', () => {
    const edit = { kind: 'insert', table: 'part', rowKind: 'skin', after: row('freight') } as const;
    expect(block(after([edit]), 'kfd_skin')).toContain('on = "door_base"');
  });

  test('a row goes into a table that has none yet', () => {
    const text = 'format = 1\n\n[job]\ntitle = "New"\nunits = "in"\n';
    const fresh = doorSession(text);
    const edit = { kind: 'insert', table: 'measure', rowKind: '', after: undefined } as const;
    expect(after([edit], fresh)).toContain('[[measure]]\nid = "kfd_measure"');
  });

  test('two new rows of one gesture get ids of their own', () => {
    const edit = { kind: 'insert', table: 'task', rowKind: 'clean', after: undefined } as const;
    const made = gesture([edit, edit]);
    const ids = made.ok ? made.edits.map((one) => 'id' in one && one.id) : [];
    expect(new Set(ids).size).toBe(2);
  });

  test('the settings sheet takes no new row', () => {
    const edit = { kind: 'insert', table: 'job', rowKind: '', after: undefined } as const;
    expect(after([edit])).toMatch(/^✗ job is not a table/);
  });
});

describe('duplicating and deleting', () => {
  test('a copy has every cell of its row', () => {
    const text = after([{ kind: 'duplicate', row: row('door_mat') }]);
    expect(block(text, 'kfd_mat')).toContain('material = "mat_34"\n\nlayers = 2\n');
  });

  test('several rows go in one gesture, also two of one id', () => {
    const twice = doorSession(`${doorPair}\n\n[[part]]\nid = "gloves"\n\nqty = 3\n`);
    const text = after(
      [row('gloves'), row('gloves', 'part', 1), row('masking')].map((one) => ({
        kind: 'delete',
        row: one,
      })),
      twice,
    );
    expect(text).not.toMatch(/id = "(gloves|masking)"/);
  });

  test('of two rows with one id the one that is meant is changed', () => {
    const twice = doorSession(`${doorPair}\n\n[[part]]\nid = "gloves"\n\nqty = 3\n`);
    const second = { ...row('gloves', 'part', 1), column: 'qty' };
    expect(after([{ kind: 'type', cell: second, text: '4' }], twice)).toMatch(/qty = 4\s*$/);
    const renamed = after([{ kind: 'rename', row: row('gloves', 'part', 1), id: 'more' }], twice);
    expect(renamed).toContain('[[part]]\nid = "more"\n\nqty = 3');
  });

  test('a row that cannot be read is neither copied nor changed', () => {
    const broken = doorSession(replaced(doorPair, 'name = "Gloves"', 'name = Gloves'));
    expect(after([{ kind: 'duplicate', row: row('gloves') }], broken)).toMatch(/cannot be read/);
    expect(after([type('gloves', 'qty', '3')], broken)).toMatch(/cannot be read/);
    const below = {
      kind: 'insert',
      table: 'part',
      rowKind: 'extra',
      after: row('gloves'),
    } as const;
    expect(after([below], broken)).toContain('kfd_extra');
  });
});

/** Ids of the part sheet in file display order. */
function order(text: string): readonly string[] {
  const rows = doorSession(text).snapshot().shown.tables.get('part') ?? [];
  return rows.map(({ id }) => id);
}

describe('moving', () => {
  test('a row goes past its neighbour of the same bench group', () => {
    const ids = order(after([{ kind: 'move', row: row('door_mat'), by: -1 }]));
    const before = order(doorPair);
    expect(ids).not.toEqual(before);
    expect(ids.indexOf('door_mat')).toBeLessThan(before.indexOf('door_mat'));
  });

  test('rows that move together keep their order and stop at the edge', () => {
    const both = ['gloves', 'solvent'].map(
      (id) => ({ kind: 'move', row: row(id), by: -1 }) as const,
    );
    expect(after(both)).toBe(doorPair);
    const down = order(after(both.map((edit) => ({ ...edit, by: 1 }))));
    expect(down.slice(-4)).toEqual(['masking', 'gloves', 'solvent', 'freight']);
  });
});

describe('kits and fixes', () => {
  test('a kit writes its rows', () => {
    const answers = { id: 'rear', name: 'Rear door', shape: 'rect(20 in, 12 in)' };
    const text = after([{ kind: 'kit', kit: 'panel', answers }]);
    expect(text).toContain('[[panel]]\nid = "rear"');
    expect(after([{ kind: 'kit', kit: 'no_kit', answers }])).toBe(
      '✗ There is no kit called no_kit.',
    );
  });

  test('a way out may write rows: the work that was forgotten', () => {
    const start = doorPair.indexOf('[[task]]\nid = "door_sanding"');
    const gone = doorPair.slice(start, doorPair.indexOf('[[task]]', start + 1));
    const forgot = doorSession(replaced(doorPair, gone, ''));
    const cell = { ...row('door_fill'), column: 'kind' };
    const text = after([{ kind: 'fix', cell, code: 'work-missing', fix: 0 }], forgot);
    expect(block(text, 'kfd_sand')).toContain('kind = "sand"\non = "door_fill"');
    const mended = doorSession(text).snapshot();
    expect(mended.problems.map(({ problem }) => problem.code)).not.toContain('work-missing');
  });

  test('a quick fix is taken once', () => {
    const bare = doorSession(replaced(doorPair, 'tilt = "15 deg"', 'tilt = "15"'));
    const cell = { ...row('mid_ring'), column: 'tilt' };
    const fix = { kind: 'fix', cell, code: 'unit-missing', fix: 0 } as const;
    expect(after([fix], bare)).toBe(doorPair);
    expect(after([fix])).toBe('✗ That problem is gone already.');
  });

  test('a setting is mended from its row', () => {
    const bare = doorSession(replaced(doorPair, '"68 degF"', '"68"'));
    const cell = { ...row('temperature', 'job'), column: 'value' };
    expect(after([{ kind: 'fix', cell, code: 'unit-missing', fix: 0 }], bare)).toBe(doorPair);
  });
});
