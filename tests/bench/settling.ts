import { gridIn, type Grid } from '../workbench/harness/grid.ts';
import { until, type Workbench } from '../workbench/harness/workbench.ts';
import { keyPause, milliseconds, percentile, type FigureLine } from './figures.ts';

const warmUps = 5;
const edits = 30;

/** From an edit sent, in ms. */
export interface SettlingTimes {
  /** To the frame with its own totals, the rest marked as settling. */
  readonly painted: number;
  /** To the frame with the first answer of the worker. */
  readonly next: number;
  /** To the frame with the last. */
  readonly last: number;
}

/** The grid of a job with a field of a row on its card, once nothing settles any more. */
export async function settledGrid(
  workbench: Workbench,
  at: { readonly job: string; readonly row: string; readonly field: string },
): Promise<Grid> {
  const grid = gridIn(workbench.page, await workbench.openGrid(at.job));
  await grid.chooseSheet('part');
  await grid.goTo(at.row, 'name');
  await until('the row card', async () => (await grid.field(at.field)) !== '');
  await workbench.page.waitForTimeout(3000);
  const notes = grid.frame.locator('.headline-notes');
  await until(
    'the shapes to settle',
    async () => !(await notes.innerText()).includes('settling') || undefined,
  );
  return grid;
}

/** Runs in the page: when the edit's own patch was painted, and when the first and the last answer came. */
function timesOfEdit(): SettlingTimes | undefined {
  const [sent] = performance.getEntriesByName('panelwright:edit');
  const painted = performance.getEntriesByName('panelwright:painted');
  const own = painted.find((mark) => typeof (mark as PerformanceMark).detail === 'number');
  const words = document.querySelector('.headline-notes')?.textContent ?? '';
  const last = painted.at(-1);
  if (sent === undefined || own === undefined || last === own || last === undefined)
    return undefined;
  if (words.includes('settling')) return undefined;
  const next = painted[painted.indexOf(own) + 1] ?? last;
  const since = (mark: PerformanceEntry): number => mark.startTime - sent.startTime;
  return { painted: since(own), next: since(next), last: since(last) };
}

function forgetMarks(): void {
  performance.clearMarks();
}

/** Types into a field again and again, each time what was not there before: answers are remembered. */
export async function settlingTimes(
  grid: Grid,
  field: string,
  textOf: (index: number) => string,
): Promise<readonly SettlingTimes[]> {
  const times: SettlingTimes[] = [];
  for (let index = 0; index < warmUps + edits; index += 1) {
    await grid.frame.evaluate(forgetMarks);
    await grid.typeField(field, textOf(index), keyPause);
    const time = await until('the job to settle', () => grid.frame.evaluate(timesOfEdit));
    if (index >= warmUps) times.push(time);
  }
  return times;
}

/** The median of one of the times. */
export function medianLine(
  times: readonly SettlingTimes[],
  key: keyof SettlingTimes,
  { what, target }: Pick<FigureLine, 'what' | 'target'>,
): FigureLine {
  const figure = milliseconds(
    percentile(
      times.map((time) => time[key]),
      0.5,
    ),
  );
  return { what, figure, target };
}
