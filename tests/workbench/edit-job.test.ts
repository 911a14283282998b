import { afterAll, beforeAll, expect, test } from 'vitest';
import { gridIn, type Grid } from './harness/grid.ts';
import { firstRingWithTilt } from './harness/sample.ts';
import { launch, until, type Workbench } from './harness/workbench.ts';

const sample = 'front-door-pair.paneljob';

let workbench: Workbench;
let grid: Grid;
let before: string;
let ring: ReturnType<typeof firstRingWithTilt>;

beforeAll(async () => {
  workbench = await launch();
  before = await workbench.bytes(sample);
  ring = firstRingWithTilt(before);
  grid = gridIn(workbench.page, await workbench.openGrid(sample));
  await grid.chooseSheet('part');
  await until(
    'figures',
    async () =>
      !Object.values(await grid.figures())
        .join()
        .includes('calculating'),
  );
});

afterAll(async () => {
  await workbench.close();
});

test('changing a ring’s tilt moves its depth, the bill and the headline; undo takes all back', async () => {
  await grid.goTo(ring.id, 'id');
  const depth = await grid.field('depth');
  const bill = await grid.bill();
  const figures = await grid.figures();
  expect(Object.keys(bill).length).toBeGreaterThan(3);

  await grid.typeField('tilt', ring.otherTilt);
  await grid.changed('the ring’s depth', () => grid.field('depth'), depth);
  await grid.changed(
    'the bill',
    async () => JSON.stringify(await grid.bill()),
    JSON.stringify(bill),
  );
  await grid.changed(
    'the headline',
    async () => JSON.stringify(await grid.figures()),
    JSON.stringify(figures),
  );

  await grid.goTo(ring.id, 'id');
  await workbench.page.keyboard.press('Control+z');
  await until('the depth to come back', async () => (await grid.field('depth')) === depth);
  await until(
    'the bill to come back',
    async () => JSON.stringify(await grid.bill()) === JSON.stringify(bill),
  );
  expect(await grid.figures()).toEqual(figures);
  await workbench.page.locator('.tab.dirty').waitFor({ state: 'detached' });
});

test('saving an edit changes one line of the file on disk', async () => {
  await grid.goTo(ring.id, 'id');
  const depth = await grid.field('depth');
  await grid.typeField('tilt', ring.otherTilt);
  await grid.changed('the ring’s depth', () => grid.field('depth'), depth);
  await workbench.page.locator('.tab.dirty').waitFor();
  expect(await workbench.bytes(sample)).toBe(before);
  await workbench.page.keyboard.press('Control+s');
  await workbench.page.locator('.tab.dirty').waitFor({ state: 'detached' });
  expect(await workbench.bytes(sample)).toBe(ring.withOtherTilt);
});

test('the content security policy refused nothing', () => {
  expect(workbench.violations).toEqual([]);
});
