import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openTaskSums } from '../../../../extension/engine/estimate/work/task-sums.ts';
import type { WorkedTask } from '../../../../extension/engine/estimate/work/task-row.ts';
import { renewedList } from '../../../../extension/engine/units/renewed-list.ts';

interface Row {
  readonly worked: WorkedTask;
}

const told = { code: 'task', message: 'Look at it.', severity: 'warning' as const };

const row: fc.Arbitrary<Row> = fc
  .record({
    working: fc.double({ min: 0, max: 900, noNaN: true }),
    elapsed: fc.double({ min: 0, max: 900, noNaN: true }),
    spread: fc.double({ min: 0, max: 90, noNaN: true }),
    phase: fc.constantFrom('structure', 'skin', 'finish'),
    who: fc.constantFrom('', 'Bo', 'Al'),
    waits: fc.boolean(),
    complete: fc.boolean(),
    source: fc.constantFrom('', 'shop must calibrate; from memory'),
    faulty: fc.boolean(),
  })
  .map(({ faulty, phase, ...figures }) => ({
    worked: {
      problems: faulty ? [told] : [],
      task: {
        ...figures,
        ...{ id: 'task', occurrence: 0, name: 'Task', kind: '', on: '', after: '' },
        ...{ phase: phase as 'skin', setup: 0, each: 0, times: 1, people: 1, steps: [] },
      },
    },
  }));

test('hours by phase and person, waits apart, and spreads as they vary by themselves', () => {
  const task = (phase: 'skin' | 'finish', who: string, waits: boolean): Row => ({
    worked: {
      problems: [],
      task: {
        ...{
          id: 'task',
          occurrence: 0,
          name: 'Task',
          kind: '',
          on: '',
          after: '',
          phase,
          who,
          waits,
        },
        ...{ setup: 0, each: 30, times: 1, people: 1, source: '', steps: [], complete: true },
        ...{ elapsed: 30, working: waits ? 0 : 30, spread: 3 },
      },
    },
  });
  const work = openTaskSums()([
    task('finish', 'Bo', false),
    task('skin', 'Al', false),
    task('skin', '', true),
  ]);
  expect(work.totals).toMatchObject({ working: 60, elapsed: 60, waiting: 30, incomplete: 0 });
  expect(work.totals.spread).toBeCloseTo(Math.sqrt(27), 12);
  expect(work.phases).toEqual([
    { key: 'skin', working: 30, elapsed: 30, waiting: 30 },
    { key: 'finish', working: 30, elapsed: 30, waiting: 0 },
  ]);
  expect(work.people.map(({ key }) => key)).toEqual(['', 'Al', 'Bo']);
});

test('tasks that change one after the other come to what all of them come to at once', () => {
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 1, maxLength: 12 }),
      fc.array(fc.array(fc.tuple(fc.nat(11), row), { maxLength: 3 }), { maxLength: 8 }),
      (first, steps) => {
        const sums = openTaskSums();
        let rows: readonly Row[] = first;
        sums(rows);
        for (const step of steps) {
          rows = renewedList(rows, new Map(step.map(([at, one]) => [at % first.length, one])));
          expect(sums(rows)).toEqual(openTaskSums()([...rows]));
        }
      },
    ),
  );
});
