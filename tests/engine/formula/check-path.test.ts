import { describe, expect, test } from 'vitest';
import { checked, faultOf, typeOf } from '../../helpers/formula-check.ts';

describe('checkFormula: names', () => {
  test.each([
    ['=lenght', 'Nothing here is called “lenght”. Did you mean length?'],
    ['=base.lenght', 'Nothing here is called “base.lenght”. Did you mean length?'],
    ['=quite_another', 'Nothing here is called “quite_another”.'],
    ['=base', 'base is a row; write base.length or another of its columns.'],
    ['=2 * in', '“in” is a unit, not a name; write a number before it, such as 2in.'],
    ['=PI', 'PI is a function; write PI().'],
    [
      '=all(ring).wall',
      'all(ring).wall is a list; use it inside a function such as SUM(all(ring).wall)',
    ],
    ['=SQRT(all(ring).wall)', 'all(ring).wall is a list; use it inside a function'],
    [
      '=SUM(all(ring).use)',
      'all(ring).use mixes dimensions: mid_ring.use is a volume and tweeter_ring.use is a mass (weight).',
    ],
    [
      '=PRODUCT(all(ring).depth)',
      'The product of all(ring).depth would change its dimension with every row',
    ],
    ['=SUM(all(ring).colour)', 'Nothing here is called “ring.colour”.'],
  ])('%s: %s', (text, message) => {
    expect(faultOf(text)).toContain(message);
  });

  test('a choice is read where the other side is one', () => {
    expect(typeOf('=build = round_tube')).toBe('yes or no');
    expect(typeOf('=round_tube = build')).toBe('yes or no');
    expect(typeOf('=IF(taxed = yes, 1, 2)')).toBe('a plain number');
    expect(typeOf('=round_tube')).toContain('Nothing here is called');
  });

  test('reading a cell, a link on the way and the cells of a list are dependencies', () => {
    const columns = checked('=on.area + SUM(all(ring).wall)').reads.map(
      ({ id, column }) => `${id}.${column}`,
    );
    expect(columns).toEqual([
      'base.area',
      'own.on',
      'mid_ring.wall',
      'tweeter_ring.wall',
      'late.wall',
      'mid_ring.qty',
      'tweeter_ring.qty',
      'late.qty',
    ]);
    expect(checked('=SUM(on(base, ring).wall)').watches).toEqual(['on:base']);
  });

  test('a name that is missing is waited for', () => {
    expect(checked('=ghost.length').watches).toEqual(['name:ghost.length']);
  });

  test('a row given to a function is told apart from a column', () => {
    const outcome = checked('=BUILD.UP(base)');
    expect(outcome.problems).toEqual([]);
    expect(outcome.rows).toEqual([{ table: 'part', id: 'base', occurrence: 0 }]);
    expect(faultOf('=BUILD.UP(2)')).toContain('wants a row for row, such as base or on, not 2');
  });

  test('blank rows do not matter for the dimension of a list', () => {
    expect(typeOf('=SUM(all(ring).wall)')).toBe('an area');
    expect(typeOf('=SUM(all(ring).none)')).toBe('zero');
  });
});
