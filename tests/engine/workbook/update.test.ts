import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { said, sheet, type Sheet } from '../../helpers/workbook-of.ts';

const sample = readFileSync(
  new URL('../../../sample-jobs/front-door-pair.paneljob', import.meta.url),
  'utf8',
).replace(/^format = 1\n\n/, '');

/** What every cell of the job says, by name. */
function everything(job: Sheet): Readonly<Record<string, string>> {
  const all: Record<string, string> = {};
  for (const table of ['panel', 'driver', 'measure', 'part', 'task', 'check', 'charge'])
    for (const row of job.workbook.rows(table))
      for (const column of [
        'length',
        'width',
        'depth',
        'area',
        'use',
        'value',
        'draw.catalyst.use',
      ])
        all[`${table}/${row.id}#${String(row.occurrence)}.${column}`] = said(
          row.cell(column).result,
        );
  return all;
}

function problemsOf(job: Sheet): readonly string[] {
  return job.workbook.problems.map(({ message, place }) => `${place?.row ?? ''}: ${message}`);
}

/** A mutation of a job's lines, as a person or a merge might make it. */
const mutation = fc.oneof(
  fc.record({
    kind: fc.constant('drop' as const),
    at: fc.nat(),
    count: fc.integer({ min: 1, max: 6 }),
  }),
  fc.record({
    kind: fc.constant('twice' as const),
    at: fc.nat(),
    count: fc.integer({ min: 1, max: 12 }),
  }),
  fc.record({
    kind: fc.constant('value' as const),
    at: fc.nat(),
    text: fc.constantFrom(
      '"15 deg"',
      '"3 in"',
      '"=base.length"',
      '"=depth * 2"',
      '"mid_ring"',
      '"none"',
      '"=SUM(all(ring).depth)"',
      '"=on.size"',
      '"=on.on.thickness"',
      '"=BUILD.UP(door_base)"',
      '"=draw.glue.use"',
      '"=job.cavity"',
      '"door_base"',
      '"ring"',
      '2',
      '"left"',
    ),
  }),
);

function mutated(
  text: string,
  change: typeof mutation extends fc.Arbitrary<infer One> ? One : never,
): string {
  const lines = text.split('\n');
  const at = change.at % lines.length;
  switch (change.kind) {
    case 'drop':
      lines.splice(at, change.count);
      break;
    case 'twice':
      lines.splice(at, 0, ...lines.slice(at, at + change.count));
      break;
    case 'value': {
      const key = /^[\w.]+(?= = )/.exec(lines[at] ?? '');
      if (key !== null) lines[at] = `${key[0]} = ${change.text}`;
    }
  }
  return lines.join('\n');
}

describe('update', () => {
  test('a workbook brought from text to text says what one opened on the last text says', () => {
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 4 }), (changes) => {
        const job = sheet(sample);
        let text = `format = 1\n\n${sample}`;
        for (const change of changes) {
          text = mutated(text, change);
          job.setText(text);
        }
        const fresh = sheet('');
        fresh.setText(text);
        expect(everything(job)).toEqual(everything(fresh));
        expect([...problemsOf(job)].sort()).toEqual([...problemsOf(fresh)].sort());
      }),
      { numRuns: 12 },
    );
  }, 120_000);

  test('a row keeps its identity until one of its answers changes', () => {
    const job = sheet(sample);
    const before = new Map(job.workbook.rows('part').map((row) => [row.id, row]));
    const { rows } = job.change('title = "', 'title = "Another ');
    expect([...rows].filter((key) => key.startsWith('part/'))).toEqual([]);
    const ring = job.workbook.row('part', 'mid_ring');
    job.change('tilt = "15 deg"', 'tilt = "17 deg"');
    expect(job.workbook.row('part', 'mid_ring')).not.toBe(ring);
    expect(job.workbook.row('part', 'door_clips')).toBe(before.get('door_clips'));
    const now = job.workbook.rows('part');
    for (const row of now) expect(job.workbook.row('part', row.id)).toBe(row);
  });

  test('an edit tells the rows whose answers changed, and no others', () => {
    const job = sheet(sample);
    const before = everything(job);
    const { rows, structure } = job.change('tilt = "15 deg"', 'tilt = "17 deg"');
    expect(structure).toBe(false);
    const after = everything(job);
    const moved = Object.keys(after).filter((cell) => after[cell] !== before[cell]);
    expect(moved.length).toBeGreaterThan(2);
    for (const cell of moved) expect([...rows]).toContain(cell.replace(/\.(?:draw\.)?[\w.]+$/, ''));
  });
});
