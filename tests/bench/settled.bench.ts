import { afterAll, beforeAll, test } from 'vitest';
import type { Grid } from '../workbench/harness/grid.ts';
import { launch, type Workbench } from '../workbench/harness/workbench.ts';
import { load, record } from './figures.ts';
import { medianLine, settledGrid, settlingTimes } from './settling.ts';

const place = { job: 'two-ring-door.paneljob', row: 'mid_ring', field: 'tilt' };

let workbench: Workbench;
let grid: Grid;

beforeAll(async () => {
  workbench = await launch();
  grid = await settledGrid(workbench, place);
});

afterAll(async () => {
  await workbench.close();
});

test('a skin settles in the workbench', { timeout: 600_000 }, async () => {
  const before = load();
  const tilt = (index: number): string => `${(10 + index / 10).toFixed(1)} deg`;
  const times = await settlingTimes(grid, place.field, tilt);
  // A skin's answer is the first that comes after the edit's own patch; layouts wait for it.
  record(
    'settled',
    [
      medianLine(times, 'painted', {
        what: 'Tilt to totals of the closed form painted, p50',
        target: '≤ 25 ms',
      }),
      medianLine(times, 'next', {
        what: 'Tilt to totals of the settled skin painted, p50',
        target: '≤ 300 ms',
      }),
      medianLine(times, 'last', {
        what: 'Tilt to totals with all layouts painted, p50',
        target: '',
      }),
    ],
    [before, load()],
  );
});
