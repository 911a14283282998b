import { describe, expect, test } from 'vitest';
import { readFile } from '../../../extension/engine/job/read-file.ts';
import { problemMaker } from '../../../extension/engine/problems.ts';
import { openLocator } from '../../../extension/engine/session/locate-problems.ts';
import { doorPair, doorSnapshot, replaced } from '../../helpers/sample-session.ts';

const problem = problemMaker({ odd: 'This is odd.' });

function lineOf(text: string, part: string): number {
  return text.slice(0, text.indexOf(part)).split('\n').length;
}

describe('openLocator', () => {
  test.each([
    ['name = "Gloves"', 'name = Gloves', 'name = Gloves'],
    ['price = "18.50 USD"', 'price = "=1in + 2qt"', 'price = "=1in'],
    ['cutout = "5 5/8 in"', 'cutout = "5 5/8"', 'cutout = "5 5/8"'],
    ['driver = "mid"', 'driver = "sub"', 'driver = "sub"'],
    ['temperature = "68 degF"', 'temperature = "68"', 'temperature = "68"'],
  ])('%s written as %s is told at its line', (before, after, found) => {
    const text = replaced(doorPair, before, after);
    const { problems } = doorSnapshot(text);
    expect(problems.map(({ line }) => line)).toContain(lineOf(text, found));
  });

  test('the range of a cell is its value with its quotes', () => {
    const reading = readFile(doorPair);
    const place = { table: 'part', row: 'mid_ring', column: 'tilt' };
    const [found] = openLocator()(reading, [problem('odd', {}, { place })]);
    expect(doorPair.slice(found?.start, found?.end)).toBe('"15 deg"');
  });

  test('a row is told at its header, and a missing setting at [job]', () => {
    const reading = readFile(doorPair);
    const [row, setting] = openLocator()(reading, [
      problem('odd', {}, { place: { table: 'part', row: 'mid_ring' } }),
      problem('odd', {}, { place: { table: 'job', column: 'note' } }),
    ]);
    expect(row?.line).toBe(lineOf(doorPair, 'id = "mid_ring"') - 1);
    expect(setting?.line).toBe(3);
  });

  test('what stands nowhere has no line', () => {
    const place = { table: 'material', row: 'fleece', column: 'price' };
    const [found] = openLocator()(readFile(doorPair), [problem('odd', {}, { place })]);
    expect(found).toMatchObject({ line: 0, start: 0, end: 0 });
  });

  test('two rows of one id have their own lines, and the same said twice is told once', () => {
    const text = `${doorPair}\n[[part]]\nid = "gloves"\n\nqty = 3\n`;
    const at = (occurrence: number) =>
      problem('odd', {}, { place: { table: 'part', row: 'gloves', occurrence } });
    const found = openLocator()(readFile(text), [at(0), at(1), at(1)]);
    expect(found.map(({ line }) => line)).toEqual([
      lineOf(text, 'id = "gloves"') - 1,
      text.split('\n').length - 4,
    ]);
  });

  test('rows that moved in the text are found again', () => {
    const locate = openLocator();
    const all = [problem('odd', {}, { place: { table: 'part', row: 'mid_ring' } })];
    const [before] = locate(readFile(doorPair), all);
    const [after] = locate(readFile(`# a remark\n${doorPair}`), all);
    expect(after?.line).toBe((before?.line ?? 0) + 1);
  });
});
