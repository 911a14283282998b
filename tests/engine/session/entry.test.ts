import { describe, expect, test } from 'vitest';
import { entryText } from '../../../extension/engine/session/entry.ts';
import { doorPair, doorSnapshot, replaced } from '../../helpers/sample-session.ts';

const ownColumn = `
[[column]]
id = "finish"

table = "part"
label = "Finish"

type = "choice"
choices = ["matt", "high_gloss"]
`;

const inches = doorSnapshot(doorPair + ownColumn);
const metric = doorSnapshot(replaced(doorPair, 'units = "in"', 'units = "mm"'));

/** What is stored when this is typed at `table/id.column`; a refusal as its sentence. */
function stored(cell: string, typed: string, snapshot = inches): string | undefined {
  const [, table = '', id = '', column = ''] = /^(\w+)\/(\w+)\.(.*)$/.exec(cell) ?? [];
  const entry = entryText({ table, id, occurrence: 0, column }, typed, snapshot);
  return entry.ok ? entry.value : `✗ ${entry.problem.message}`;
}

describe('entryText', () => {
  test.each([
    ['part/mid_ring.depth', '3 1/2"', '3 1/2 in'],
    ['part/mid_ring.depth', `2'-3 3/8"`, '2 ft 3 3/8 in'],
    ['part/mid_ring.depth', '3.5', '3.5 in'],
    ['part/mid_ring.depth', '90mm', '90 mm'],
    ['part/mid_ring.tilt', '15', '15 deg'],
    ['driver/mid.price', '149', '149 USD'],
    ['driver/mid.displacement', '12 fl oz', '12 floz'],
    ['task/measuring.minutes', '1 h 15 min', '1 h 15 min'],
    ['measure/door_seal.value', '5/8"', '5/8 in'],
    ['measure/door_seal.value', '5', '5'],
    ['job/job.temperature', '70', '70 degF'],
  ])('in %s, %s is kept as %s', (cell, typed, kept) => {
    expect(stored(cell, typed)).toBe(kept);
  });

  test('a bare number gets the unit of a metric job', () => {
    const cells = ['part/mid_ring.depth', 'part/mid_ring.tilt', 'job/job.temperature'];
    expect(cells.map((cell) => stored(cell, '20', metric))).toEqual(['20 mm', '20 deg', '20 degC']);
  });

  test('a count is kept with the word its material is counted in', () => {
    expect(stored('part/door_clips.qty', '25 each')).toBe('25 each');
    expect(stored('part/gloves.qty', '10 pair')).toBe('10 pair');
    expect(stored('part/gloves.qty', '10 can')).toMatch(/^✗ “can” is not a unit here/);
  });

  test('in a column of shares a bare number from 1 up is meant in percent', () => {
    expect(stored('part/door_soak.percent', '2')).toBe('2 %');
    expect(stored('part/door_soak.draw.catalyst.percent', '1.5')).toBe('1.5 %');
    expect(stored('part/door_soak.percent', '0.02')).toBe('0.02');
    expect(stored('part/door_clips.qty', '2')).toBe('2');
  });

  test('a shape gets the job’s unit on its bare sizes and words for its marks', () => {
    expect(stored('part/door_base.shape', 'rect(24", 12 1/2)')).toBe('rect(24 in, 12 1/2 in)');
    expect(stored('part/door_base.shape', 'circle(200)', metric)).toBe('circle(200 mm)');
    expect(stored('part/door_base.shape', 'egg(8in)')).toMatch(/^✗ .*circle/);
  });

  test('a name is taken for the id it stands for', () => {
    expect(stored('part/mid_ring.on', 'front door base')).toBe('door_base');
    expect(stored('part/mid_ring.driver', 'Tweeter')).toBe('twt');
    expect(stored('part/door_cover.material', 'Automotive vinyl, 54 in')).toBe('vinyl_54');
    expect(stored('part/mid_ring.on', 'door_base')).toBe('door_base');
    expect(stored('part/mid_ring.on', 'roof')).toBe('✗ There is no part called “roof”.');
  });

  test('“none” switches a material off, but is no row to stand on', () => {
    expect(stored('part/mid_ring.material', 'none')).toBe('none');
    expect(stored('part/mid_ring.draw.glue.material', 'none')).toBe('none');
    expect(stored('part/mid_ring.on', 'none')).toMatch(/^✗ There is no part/);
  });

  test('a kind is taken by id or by name, of its own table only', () => {
    expect(stored('part/mid_ring.kind', 'Ring cut from tube')).toBe('tube_ring');
    expect(stored('part/mid_ring.kind', 'tube ring')).toBe('tube_ring');
    expect(stored('task/measuring.kind', 'ring')).toBe('✗ There is no kind of task called “ring”.');
  });

  test('words of a choice may be typed with spaces', () => {
    expect(stored('part/mid_ring.build', 'Round Baffle')).toBe('round_baffle');
    expect(stored('driver/mid.supply', 'in car')).toBe('in_car');
    expect(stored('part/mid_ring.finish', 'high gloss')).toBe('high_gloss');
    expect(stored('job/job.units', 'MM')).toBe('mm');
    expect(stored('job/job.units', 'cm')).toBe('✗ units has no value “cm”. It may be: in, mm.');
  });

  test('yes and no may be shortened', () => {
    const said = ['Y', 'yes', 'TRUE', 'n', 'No'].map((typed) =>
      stored('part/freight.taxed', typed),
    );
    expect(said).toEqual(['yes', 'yes', 'yes', 'no', 'no']);
    expect(stored('part/freight.taxed', 'maybe')).toBe('✗ taxed is yes or no, not “maybe”.');
  });

  test('a date is a day of the calendar', () => {
    expect(stored('job/job.date', '2026-3-1')).toBe('2026-03-01');
    expect(stored('job/job.date', '2026-02-30')).toMatch(/^✗ .*not a day/);
    expect(stored('job/job.date', 'tomorrow')).toMatch(/^✗ .*not a day/);
  });

  test('words between commas become a list', () => {
    expect(stored('column/finish.choices', 'matt, high_gloss')).toBe('["matt", "high_gloss"]');
    expect(stored('column/finish.choices', '["matt"]')).toBe('["matt"]');
  });

  test('a lone number in a formula gets the unit that is wanted', () => {
    expect(stored('part/mid_ring.depth', '=depth + 0.5')).toBe('=depth + 0.5in');
    expect(stored('part/mid_ring.depth', '=driver.depth + 5', metric)).toBe('=driver.depth + 5mm');
  });

  test('a formula that cannot be read is refused with its sentence', () => {
    expect(stored('part/mid_ring.depth', '=depth +')).toMatch(/^✗ A value is missing after \+/);
  });

  test('links, choices and kinds cannot be formulas', () => {
    for (const column of ['on', 'kind', 'build'])
      expect(stored(`part/mid_ring.${column}`, '=1+1')).toMatch(/cannot be a formula/);
  });

  test.each([
    ['part/mid_ring.depth', '3 floz', 'a length is wanted'],
    ['part/mid_ring.depth', '1,200mm', 'write 1200mm'],
    ['driver/mid.price', '48.50 EUR', 'this job is in USD'],
    ['part/mid_ring.depth', 'deep', 'does not begin with a number'],
  ])('in %s, %s is refused: %s', (cell, typed, reason) => {
    expect(stored(cell, typed)).toContain(reason);
  });

  test('results cannot be typed over', () => {
    for (const column of ['area', 'need', 'charge', 'wall'])
      expect(stored(`part/mid_ring.${column}`, '5')).toMatch(/worked out/);
  });

  test('keys of draws are read like the columns they stand for', () => {
    expect(stored('part/door_soak.draw.catalyst.material', 'MEKP catalyst')).toBe('catalyst');
    expect(stored('part/door_soak.draw.pot.per', 'Job')).toBe('job');
    expect(stored('part/mid_ring.draw.glue.use', '2 fl oz')).toBe('2 floz');
  });

  test('a blank text clears the cell, and line breaks of a paste become spaces', () => {
    expect(stored('part/mid_ring.depth', '  ')).toBeUndefined();
    expect(stored('part/mid_ring.name', 'Mid\r\nring ')).toBe('Mid ring');
  });
});
