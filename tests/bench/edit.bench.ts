import { afterAll, beforeAll, test } from 'vitest';
import { gridIn, type Grid } from '../workbench/harness/grid.ts';
import { launch, until, type Workbench } from '../workbench/harness/workbench.ts';
import { keyPause, load, milliseconds, percentile, record, type FigureLine } from './figures.ts';

const sample = 'front-door-pair.paneljob';
const ring = 'mid_ring';
const warmUps = 10;
const edits = 60;
const others = 30;

let workbench: Workbench;
let grid: Grid;

beforeAll(async () => {
  workbench = await launch();
  grid = gridIn(workbench.page, await workbench.openGrid(sample));
  await grid.chooseSheet('part');
  await grid.goTo(ring, 'name');
  await until('the row card', async () => (await grid.field('tilt')) !== '');
  // The controls' own library comes after the first paint, and what knobs do after that.
  await workbench.page.waitForTimeout(3000);
});

afterAll(async () => {
  await workbench.close();
});

interface Time {
  /** From the edit sent to its row and the totals written into the page, in ms. */
  readonly written: number;
  /** From the edit sent to the frame that shows them, in ms. */
  readonly painted: number;
  /** From the edit sent to the frame that shows all else that moved, in ms. */
  readonly rest: number;
}

/** Runs in the page: the times of the edit sent last; nothing until they are over. */
function timesOfEdit(): Time | undefined {
  const [sent] = performance.getEntriesByName('panelwright:edit');
  // A patch that no edit of this page caused has null there.
  const [written, painted] = ['applied', 'painted'].map((name) =>
    performance
      .getEntriesByName(`panelwright:${name}`)
      .find((mark) => typeof (mark as PerformanceMark).detail === 'number'),
  );
  // All else comes by itself, or with an answer of the worker that was there as soon.
  const rest = ['rest-painted', 'painted']
    .flatMap((name) => performance.getEntriesByName(`panelwright:${name}`))
    .find(
      (mark) =>
        typeof (mark as PerformanceMark).detail !== 'number' &&
        mark.startTime > (sent?.startTime ?? 0),
    );
  if (!sent || !written || !painted || !rest) return undefined;
  const since = (mark: PerformanceEntry): number => mark.startTime - sent.startTime;
  return { written: since(written), painted: since(painted), rest: since(rest) };
}

function forgetMarks(): void {
  performance.clearMarks();
}

async function timeOf(type: () => Promise<void>): Promise<Time> {
  await grid.frame.evaluate(forgetMarks);
  await type();
  return until('the edit to be painted', () => grid.frame.evaluate(timesOfEdit));
}

async function typeTilt(text: string): Promise<void> {
  await grid.goTo(ring, 'tilt');
  await workbench.page.waitForTimeout(100);
  const { keyboard } = workbench.page;
  await keyboard.type(text, { delay: keyPause });
  await workbench.page.waitForTimeout(keyPause);
  await keyboard.press('Enter');
}

async function timesOf(type: (text: string) => Promise<void>): Promise<readonly Time[]> {
  const times: Time[] = [];
  for (let index = 0; index < others; index += 1)
    times.push(await timeOf(() => type(index % 2 === 0 ? '18 deg' : '16 deg')));
  return times;
}

/** Everything that a tilt moves, as one text. */
async function totals(): Promise<string> {
  return JSON.stringify([await grid.figures(), await grid.bill()]);
}

test('an edit in the workbench', { timeout: 600_000 }, async () => {
  const before = load();
  const tilts: Time[] = [];
  const notes: Time[] = [];
  let moved = 0;
  for (let index = 0; index < warmUps + edits; index += 1) {
    const note = await timeOf(() => grid.typeField('note', `Note ${String(index)}`, keyPause));
    const was = await totals();
    const tilt = await timeOf(() =>
      grid.typeField('tilt', index % 2 === 0 ? '19 deg' : '15 deg', keyPause),
    );
    if ((await totals()) !== was) moved += 1;
    if (index < warmUps) continue;
    notes.push(note);
    tilts.push(tilt);
  }
  if (moved < warmUps + edits) throw new Error(`Only ${String(moved)} tilts moved the totals.`);
  const hurries = await timesOf((text) => grid.typeField('tilt', text));
  const cells = await timesOf(typeTilt);
  record('edit', figures({ tilts, notes, hurries, cells }), [before, load()]);
});

function figures({
  tilts,
  notes,
  hurries,
  cells,
}: Readonly<Record<string, readonly Time[]>>): readonly FigureLine[] {
  const at = (times: readonly Time[] = [], key: keyof Time, share: number): number =>
    percentile(
      times.map((time) => time[key]),
      share,
    );
  const ratio = at(tilts, 'painted', 0.95) / at(notes, 'painted', 0.95);
  const line = (what: string, value: number, target: string): FigureLine => ({
    what,
    figure: milliseconds(value),
    target,
  });
  return [
    line('Tilt to totals painted, p50', at(tilts, 'painted', 0.5), '≤ 25 ms'),
    line('Tilt to totals painted, p95', at(tilts, 'painted', 0.95), ''),
    line('Tilt to totals written, before their frame, p50', at(tilts, 'written', 0.5), ''),
    line('Tilt to all else that it moved painted, p50', at(tilts, 'rest', 0.5), ''),
    line('Tilt to totals painted, all keys at once, p50', at(hurries, 'painted', 0.5), ''),
    line(
      'Tilt typed in its cell of the grid, to totals painted, p50',
      at(cells, 'painted', 0.5),
      '',
    ),
    line('Note to its cell painted, p50', at(notes, 'painted', 0.5), ''),
    line('Note to its cell painted, p95', at(notes, 'painted', 0.95), ''),
    line('Note to its cell written, before its frame, p50', at(notes, 'written', 0.5), ''),
    { what: 'Tilt p95 ÷ note p95', figure: ratio.toFixed(2), target: '≤ 2.5' },
  ];
}
