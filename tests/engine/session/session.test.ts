import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdits } from '../../../extension/engine/job/apply-edits.ts';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { changedText } from '../../../extension/engine/job/text-changes.ts';
import type { Edit } from '../../../extension/engine/job/source.ts';
import { rowKey } from '../../../extension/engine/session/row-key.ts';
import { openSession } from '../../../extension/engine/session/session.ts';
import { settleNow } from '../../../extension/engine/session/settle-now.ts';
import type { Snapshot } from '../../../extension/engine/session/snapshot.ts';
import { workedOut } from '../../../extension/engine/session/worked-out.ts';
import { demoBook, doorPair, doorSession, replaced } from '../../helpers/sample-session.ts';

const deeper: Edit = {
  kind: 'set-cell',
  row: { table: 'part', id: 'mid_ring' },
  column: 'depth',
  text: '5 in',
};

function depthOf(snapshot: Snapshot): string | undefined {
  return snapshot.workbook.row('part', 'mid_ring')?.cell('depth').text;
}

/** Everything a person sees of a job, as plain data. */
function seen(snapshot: Snapshot): unknown {
  const tables = ['panel', 'driver', 'measure', 'part', 'task', 'check', 'charge'];
  return {
    bill: snapshot.bill.lines,
    totals: snapshot.bill.totals,
    groups: snapshot.bill.groups,
    waits: snapshot.bill.waits.map(({ key }) => key),
    work: snapshot.work,
    price: snapshot.price,
    checks: snapshot.checks,
    problems: snapshot.problems.map(({ problem, line }) => [problem.code, problem.message, line]),
    cells: tables.flatMap((table) =>
      snapshot.workbook
        .rows(table)
        .map((row) => [rowKey(row), row.kind, ['depth', 'use', 'qty', 'value'].map(row.cell)]),
    ),
    needs: snapshot.workbook.rows('part').map((row) => snapshot.needs.get(rowKey(row)) ?? []),
  };
}

describe('setText', () => {
  test('a new text is calculated and tells the rows that changed', () => {
    const session = doorSession();
    const change = session.setText(replaced(doorPair, 'tilt = "15 deg"', 'tilt = "20 deg"'));
    expect(change.rows).toContain('part/mid_ring#0');
    expect(change.rows).not.toContain('part/gloves#0');
    expect(change).toMatchObject({ structure: false, whole: false });
  });

  test('the same text again changes nothing', () => {
    const session = doorSession();
    const before = session.snapshot();
    expect(session.setText(doorPair)).toEqual({ rows: new Set(), structure: false, whole: false });
    expect(session.snapshot()).toBe(before);
  });

  test('units, currency, finest fraction and shop book change everything', () => {
    for (const line of ['units = "mm"', 'units = "in"\nfraction = "32"']) {
      const session = doorSession();
      expect(session.setText(replaced(doorPair, 'units = "in"', line)).whole).toBe(true);
    }
    const fine = doorSession(replaced(doorPair, 'units = "in"', 'units = "in"\nfraction = "32"'));
    expect(fine.snapshot().settings).toEqual({ units: 'in', currency: 'USD', fraction: 32 });
  });

  test('a broken row is locked while the rest goes on, and comes back', () => {
    const session = doorSession();
    const before = seen(session.snapshot());
    session.setText(replaced(doorPair, 'name = "Gloves"', 'name = Gloves"'));
    const broken = session.snapshot();
    expect(broken.workbook.row('part', 'gloves')?.broken).toBe(true);
    expect(broken.reading.state).toBe('readable');
    expect(broken.problems.map(({ problem }) => problem.code)).toContain('value-unquoted');
    session.setText(doorPair);
    expect(seen(session.snapshot())).toEqual(before);
  });

  test('conflict markers keep the last good grid, tell their line, and go again', () => {
    const session = doorSession();
    const before = seen(session.snapshot());
    const lines = doorPair.split('\n');
    const at = lines.findIndex((line) => line.startsWith('tilt = "15'));
    const ours = [lines[at], '=======', 'tilt = "16 deg"', '>>>>>>> theirs'];
    session.setText(
      [...lines.slice(0, at), '<<<<<<< ours', ...ours, ...lines.slice(at + 1)].join('\n'),
    );
    const torn = session.snapshot();
    expect(torn.reading.state).toBe('conflicted');
    expect(torn.shown.text).toBe(doorPair);
    expect(depthOf(torn)).toContain('ROUNDUPTO');
    const marker = torn.problems.find(({ problem }) => problem.code === 'conflict-markers');
    expect(marker?.line).toBe(at + 1);
    expect(session.plan([deeper])).toMatchObject({ ok: false });
    expect(session.whatIf([deeper])).toBeUndefined();
    session.setText(doorPair);
    expect(seen(session.snapshot())).toEqual(before);
  });

  test('a newer format is shown and takes no edit', () => {
    const session = doorSession(replaced(doorPair, 'format = 1', 'format = 99'));
    expect(session.snapshot().reading.state).toBe('newer');
    expect(session.snapshot().bill.lines.length).toBeGreaterThan(10);
    expect(session.plan([deeper])).toMatchObject({ ok: false, problem: { code: 'file-newer' } });
  });

  test('a text torn at opening shows nothing until it is mended', () => {
    const session = openSession(`<<<<<<< a\n${doorPair}=======\n>>>>>>> b\n`, demoBook);
    expect(session.snapshot().workbook.rows('part')).toEqual([]);
    session.setText(doorPair);
    expect(seen(session.snapshot())).toEqual(seen(doorSession().snapshot()));
  });
});

describe('settle', () => {
  test.each([
    ['conflict markers', `${doorPair}<<<<<<< a\n=======\n>>>>>>> b\n`],
    ['torn text', `[[part\n`],
  ])('an answer that comes after %s is taken, and not asked for again', (_, text) => {
    const session = doorSession();
    expect(session.snapshot().heavy).not.toEqual([]);
    session.setText(text);
    const worked: string[] = [];
    for (
      let [question] = session.snapshot().heavy;
      question !== undefined;
      [question] = session.snapshot().heavy
    ) {
      expect(worked).not.toContain(question.key);
      worked.push(question.key);
      session.settle(new Map([[question.key, { question, answer: workedOut(question) }]]));
    }
    expect(session.snapshot().reading.text).toBe(text);
    session.setText(doorPair);
    expect(session.snapshot().heavy).toEqual([]);
    const whole = doorSession();
    settleNow(whole);
    expect(seen(session.snapshot())).toEqual(seen(whole.snapshot()));
  });
});

describe('setBook', () => {
  test('prices of the shop book are used at once', () => {
    const session = openSession(doorPair);
    expect(session.snapshot().book.origin).toBe('demo');
    const change = session.setBook(demoBook);
    expect(change.whole).toBe(true);
    expect(session.snapshot().book.origin).toBe('file');
    expect(seen(session.snapshot())).toEqual(seen(doorSession().snapshot()));
    session.setBook(undefined);
    expect(session.snapshot().book.origin).toBe('demo');
  });
});

describe('plan', () => {
  test('an edit is worked out as the smallest change and not done', () => {
    const session = doorSession();
    const planned = session.plan([deeper]);
    if (!planned.ok) throw new Error(planned.problem.message);
    expect(planned.value.changes.map(({ text }) => text)).toEqual(['"5 in"']);
    expect(changedText(doorPair, planned.value.changes)).toBe(planned.value.text);
    expect(session.snapshot().reading.text).toBe(doorPair);
    session.setText(planned.value.text);
    expect(depthOf(session.snapshot())).toBe('5 in');
  });

  test('a row that is not there is told', () => {
    const row = { table: 'part', id: 'roof' };
    expect(doorSession().plan([{ kind: 'delete-row', row }])).toMatchObject({
      problem: { message: 'There is no part called roof (any more).' },
    });
  });
});

describe('whatIf', () => {
  test('tells the bill after an edit and leaves everything as it was', () => {
    const session = doorSession();
    const before = seen(session.snapshot());
    const snapshot = session.snapshot();
    const then = session.whatIf([deeper]);
    expect(then?.bill.totals.charge).not.toBe(snapshot.bill.totals.charge);
    expect(session.snapshot()).toBe(snapshot);
    expect(seen(session.snapshot())).toEqual(before);
    const planned = session.plan([deeper]);
    if (planned.ok) session.setText(planned.value.text);
    expect(session.snapshot().bill.totals).toEqual(then?.bill.totals);
    expect(session.snapshot().checks).toEqual(then?.checks);
  });

  test('another unit system is undone as well', () => {
    const session = doorSession();
    const before = seen(session.snapshot());
    session.whatIf([{ kind: 'set-head', key: 'units', text: 'mm' }]);
    session.whatIf([{ kind: 'delete-row', row: { table: 'part', id: 'door_base' } }]);
    expect(seen(session.snapshot())).toEqual(before);
    session.setText(replaced(doorPair, 'qty = 10', 'qty = 12'));
    const fresh = doorSession(session.snapshot().reading.text);
    expect(seen(session.snapshot())).toEqual(seen(fresh.snapshot()));
  });
});

const ids = readFile(doorPair).tables;
const rowsOf = (...tables: readonly string[]) =>
  tables.flatMap((table) => (ids.get(table) ?? []).map(({ id }) => ({ table, id })));
const rows = rowsOf('part', 'task', 'check', 'driver');

const set = (
  table: string,
  columns: readonly string[],
  texts: readonly (string | undefined)[],
): fc.Arbitrary<Edit> =>
  fc.record({
    kind: fc.constant('set-cell' as const),
    row: fc.constantFrom(...rowsOf(table)),
    column: fc.constantFrom(...columns),
    text: fc.constantFrom(undefined, ...texts),
  });

/** Edits of what hangs together: what is made of one row follows from another. */
const likelyEdit: fc.Arbitrary<Edit> = fc.oneof(
  set('part', ['tilt', 'note'], ['10 deg', '12 deg']),
  set('part', ['hand', 'per', 'panel', 'driver'], ['left', 'job', 'door', 'mid', 'twt']),
  set(
    'part',
    ['waste', 'price', 'taxed', 'marked_up', 'draw.glue.material'],
    ['20 %', '4 USD', 'no', 'none'],
  ),
  set('part', ['shape', 'size', 'length'], ['circle(7in)', '9 in', '=size + 1in']),
  set('panel', ['hands', 'count', 'name'], ['left', '3', 'Rear']),
  set('driver', ['price', 'supply', 'frame', 'cutout'], ['80 USD', 'client', '5 in', '6 in']),
  set('measure', ['value'], ['3 in', '2 in']),
  set('task', ['minutes', 'who', 'on', 'per', 'learn'], ['30 min', 'Ann', 'door', 'job', '90 %']),
  set('charge', ['percent', 'rate', 'on', 'of', 'taxed'], ['7 %', '70 USD/h', 'labour', 'no']),
  set('check', ['least', 'most', 'level', 'value'], ['1 in', '2 in', 'must', '=mid_ring.depth']),
);

const randomEdit: fc.Arbitrary<Edit> = fc.oneof(
  fc.record({
    kind: fc.constant('set-cell' as const),
    row: fc.constantFrom(...rows),
    column: fc.constantFrom('depth', 'qty', 'on', 'kind', 'material', 'tilt', 'name', 'use'),
    text: fc.constantFrom(undefined, '2 in', '3', 'ring', 'door_base', '=depth + 1in', 'mdf_12'),
  }),
  fc.record({ kind: fc.constant('delete-row' as const), row: fc.constantFrom(...rows) }),
  fc.record({
    kind: fc.constant('move-row' as const),
    row: fc.constantFrom(...rows),
    after: fc.constantFrom(null, ...rows.map(({ id }) => id)),
  }),
  fc.record({
    kind: fc.constant('rename-row' as const),
    row: fc.constantFrom(...rows),
    id: fc.constantFrom('renamed_a', 'renamed_b'),
  }),
);

const anyEdit = fc.oneof(randomEdit, { arbitrary: likelyEdit, weight: 3 });

/** What is wrong with one cell after another of a row, written against their order in the file. */
const againstTheOrder: readonly Edit[] = [
  ['shape', '=size + 1in'],
  ['panel', 'mid'],
].map(([column = '', text]) => ({
  kind: 'set-cell',
  row: { table: 'part', id: 'mid_ends' },
  column,
  text,
}));

test('a job edited step by step says the same as the file opened afresh', () => {
  fc.assert(
    fc.property(fc.array(anyEdit, { minLength: 1, maxLength: 8 }), (edits) => {
      const session = doorSession();
      let text = doorPair;
      for (const edit of edits) {
        const applied = applyEdits(readFile(text), [edit]);
        if (applied.ok) text = changedText(text, applied.value.changes);
        session.setText(text);
        session.snapshot().needs.get('part/mid_ring#0');
      }
      expect(seen(session.snapshot())).toEqual(seen(doorSession(text).snapshot()));
    }),
    { numRuns: 5, examples: [[[...againstTheOrder]]] },
  );
});
