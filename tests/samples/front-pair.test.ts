import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { writeEmptyJob } from '../../extension/engine/job/empty-job.ts';
import { openSession } from '../../extension/engine/session/session.ts';
import { settleNow } from '../../extension/engine/session/settle-now.ts';
import { enterSteps } from '../helpers/enter-steps.ts';
import { entryCount, frontPairEntries } from './front-pair-entries.ts';

const folder = new URL('../../sample-jobs/', import.meta.url);
const text = readFileSync(new URL('front-door-pair.paneljob', folder), 'utf8');
const bookText = readFileSync(new URL('books/demo-shop.panelbook', folder), 'utf8');
const opened = openSession(text, bookText);
settleNow(opened);
const { workbook, bill } = opened.snapshot();

const inch = 25.4;
const units = { in: inch, sqin: inch ** 2, sqft: (12 * inch) ** 2, g: 1, deg: Math.PI / 180 };

/** A cell of a part or check in a unit. */
function figure(id: string, column: string, unit: keyof typeof units): number {
  const row = workbook.row('part', id) ?? workbook.row('check', id);
  const result = row?.cell(column).result;
  if (result?.state !== 'value' || result.value.kind !== 'quantity') {
    throw new Error(`${id}.${column} has no figure`);
  }
  return result.value.base / units[unit];
}

function line(id: string): (typeof bill.lines)[number] {
  const found = bill.lines.find((one) => one.id === id);
  if (found === undefined) throw new Error(`the bill has no ${id}`);
  return found;
}

describe('the front-door pair', () => {
  test('is written from a new job by 40 entries or fewer', () => {
    expect(entryCount(frontPairEntries)).toBeLessThanOrEqual(40);
    const start = writeEmptyJob({
      title: 'New job',
      units: 'in',
      currency: 'USD',
      date: '2026-11-24',
    });
    expect(enterSteps(start, frontPairEntries)).toBe(text);
  });

  // Figures of the same job worked by hand with geometry and the rules of docs/worked-job.md.
  test.each([
    ['door_base', 'area', 'sqin', 386.566],
    ['door_base', 'perimeter', 'in', 78.566],
    ['mid_ring', 'depth', 'in', 2],
    ['mid_ring', 'strip', 'in', 1.75],
    ['mid_ring', 'low', 'in', 0.7147],
    ['mid_ring', 'high', 'in', 2.7853],
    // 24.7064 in round the outside less half a thickness all round (pi x 1/8 in), and 1 in of lap.
    ['mid_ring', 'length', 'in', 25.3137],
    ['mid_ring', 'wall', 'sqin', 43.236],
    ['mid_ring', 'shadow', 'sqin', 48.553],
    ['mid_ring', 'radius', 'in', 3.732],
    ['twt_ring', 'strip', 'in', 1.25],
    // Flat 30.5 × 19.5 and 31.5 × 20.5 in; a pull over a lip of 3.9313 in radius, 1.75 in high, adds
    // 2(√(9.0687² + 1.75²) − 9.0687) along and 2(√(3.5687² + 1.75²) − 3.5687) across.
    ['door_skin', 'length', 'in', 30.8346],
    ['door_skin', 'width', 'in', 20.312],
    ['door_cover', 'length', 'in', 31.8346],
    ['door_cover', 'width', 'in', 21.312],
    ['mid_sticks', 'use', 'in', 1.25],
    ['mid_aim', 'value', 'deg', 44.679],
    ['mid_swing', 'value', 'in', 2.402],
  ] as const)('%s.%s is what the hand gave', (id, column, unit, expected) => {
    expect(Math.abs(figure(id, column, unit) - expected)).toBeLessThan(6e-4);
  });

  // By hand 385.54 sq in: base less shadows and all of the rings' walls, as if the cloth went down them.
  // It is stretched across instead, so its skin lies between the plan and the plan with walls.
  test('the skin is stretched over the rings, not laid down their walls', () => {
    const flat = figure('door_base', 'area', 'sqin');
    const walls = figure('mid_ring', 'wall', 'sqin') + figure('twt_ring', 'wall', 'sqin');
    const shadows = figure('mid_ring', 'shadow', 'sqin') + figure('twt_ring', 'shadow', 'sqin');
    const area = figure('door_skin', 'area', 'sqin');
    expect(area).toBeGreaterThan(flat - shadows);
    expect(area).toBeLessThan(flat + walls - shadows);
    expect(area).toBeCloseTo(348.27, 2);
  });

  // The rings of this job have no places, so a formula tells; placed anywhere sensible the mesh agrees.
  test('rings put somewhere on the door move the area by no more than the formula may be off', () => {
    const placed = text
      .replace('turn = "47 deg"\n', 'turn = "47 deg"\n\nat_x = "-5 in"\nat_y = "-1 in"\n')
      .replace('tilt = "20 deg"\n', 'tilt = "20 deg"\n\nat_x = "8 in"\nat_y = "3 in"\n');
    const session = openSession(placed, bookText);
    settleNow(session);
    const result = session.snapshot().workbook.row('part', 'door_skin')?.cell('area').result;
    if (result?.state !== 'value' || result.value.kind !== 'quantity') throw new Error('no area');
    expect(result.estimate).toBeUndefined();
    expect(
      Math.abs(result.value.base / units.sqin / figure('door_skin', 'area', 'sqin') - 1),
    ).toBeLessThan(0.02);
  });

  // By hand 497.5 + 124.4 + 284.6 = 906.5 g a panel for 385.54 sq in; as much less as the skin is less.
  test('a panel takes some 819 g of resin', () => {
    const coats = ['door_soak', 'door_flow', 'door_wet'].map((id) => figure(id, 'use', 'g'));
    const sum = coats.reduce((total, coat) => total + coat, 0);
    expect(sum / 906.5).toBeCloseTo(348.27 / 385.54, 3);
    expect(sum).toBeCloseTo(818.84, 1);
  });

  // 2 % by mass, 1.12 g/cm3: 16.19 ml for 906.5 g by hand; with 15 % waste, for this panel's share of it.
  test('catalyst is worked from resin with its waste, two per cent by mass', () => {
    const millilitres = line('catalyst').need?.base ?? 0;
    expect(millilitres / 1000 / 1.05 / 2).toBeCloseTo(16.19 * 1.15 * (818.84 / 906.5), 1);
  });

  test('two quarts of resin do, where the hand bought a gallon', () => {
    const resin = line('poly_resin');
    expect(resin.packs.map(({ count, holds }) => [count, holds.unit])).toEqual([[2, 'qt']]);
    expect((resin.need?.base ?? 0) / 946_352.946).toBeCloseTo(1.809, 3);
  });

  test.each([
    ['fleece', 0.8565, 4],
    ['vinyl_54', 0.8843, 4],
    ['speaker_cloth', 0.2917, 2],
  ])('%s is laid out in rows and bought by the quarter yard', (id, yards, steps) => {
    const bought = line(id);
    expect((bought.need?.base ?? 0) / 914.4).toBeCloseTo(yards, 3);
    expect(bought.packs.map(({ count }) => count)).toEqual([steps]);
  });

  test.each([
    ['hardboard_6', 1400],
    ['mdf_12', 1350],
    ['mdf_6', 950],
    ['panelboard_3', 1800],
    ['tube_89', 450],
    ['dowel_6', 120],
    ['fleece', 950],
    ['vinyl_54', 2800],
    ['speaker_cloth', 550],
    ['catalyst', 600],
    ['mat_34', 960],
    ['light_filler', 2100],
    ['disc_6', 2200],
    ['sealer', 850],
    ['contact_cement', 1300],
    ['staple_10', 1200],
    ['magnet_10', 1200],
    ['gasket_tape', 800],
    ['clip', 1100],
    ['mix_pot', 1800],
    ['chip_brush', 1400],
  ])('%s costs in packs what the hand gave', (id, cents) => {
    expect(line(id).buy).toBe(cents);
  });

  // By hand 681.70: less 14.00 (two quarts for a gallon), 6.50 more adhesive, 0.90 more wire.
  test('the packs of the pair come to 675.10, each difference known', () => {
    expect(bill.totals.buy).toBe(68_170 - 1400 + 650 + 90);
    expect(bill.totals.charge).toBe(51_519);
    expect(bill.totals.panels).toBe(2);
  });
});

describe('hours and price of the front-door pair', () => {
  const { work, price } = openSession(text, bookText).snapshot();
  const task = (id: string): number =>
    work.tasks.find((one) => one.id === id)?.elapsed ?? Number.NaN;

  // The table “Hours” of docs/worked-job.md: what does not go by the skin.
  test.each([
    ['measuring', 75],
    ['mid_making', 60],
    ['twt_making', 60],
    ['mid_aiming', 50],
    ['mid_framing', 54],
    ['door_trimming', 60],
    ['door_fitting', 100],
    ['cleaning', 45],
    ['paperwork', 60],
    ['door_curing', 360],
  ])('%s takes %s minutes', (id, minutes) => {
    expect(Math.abs(task(id) - minutes)).toBeLessThan(0.05);
  });

  test('work that goes by the skin is set-up and rate on its area, for two doors', () => {
    const skin = figure('door_skin', 'area', 'sqft');
    expect(task('door_stretching')).toBeCloseTo(10 + 2 * 10 * skin, 6);
    expect(task('door_soaking')).toBeCloseTo(12 + 2 * 6 * skin, 6);
    expect(task('door_sanding')).toBeCloseTo(5 + 2 * 2 * 18 * skin, 6);
  });

  test('the price lies between all packs and what is used, and is half due before work begins', () => {
    expect(price.state).toBe('whole');
    expect(price.totals.price).toBeGreaterThan(price.ways.used);
    expect(price.totals.price).toBeLessThan(price.ways.packs);
    const deposit = price.charges.find(({ id }) => id === 'deposit')?.amount ?? 0;
    expect(Math.abs(deposit * 2 - price.totals.total)).toBeLessThanOrEqual(1);
  });
});
