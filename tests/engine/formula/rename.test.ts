import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseFormula } from '../../../extension/engine/formula/parse.ts';
import { referencesOf } from '../../../extension/engine/formula/references.ts';
import { renamedInFormula } from '../../../extension/engine/formula/rename.ts';

const columns = ['area', 'length', 'by_mass', 'job.temperature'];

function renamed(text: string, from = 'base'): string {
  return renamedInFormula(text, from, 'door', (path) => columns.includes(path));
}

describe('renamedInFormula', () => {
  test.each([
    ['=base.area * 2', '=door.area * 2'],
    ['=base.material.thickness', '=door.material.thickness'],
    ['=on.area + base.area', '=on.area + door.area'],
    ['=SUM(on(base, ring).wall)', '=SUM(on(door, ring).wall)'],
    ['=SUM(on( base , ring).wall)', '=SUM(on( door , ring).wall)'],
    ['=SKIN.AREA(base)', '=SKIN.AREA(door)'],
    ['=BUILD.UP( base ; 2)', '=BUILD.UP( door ; 2)'],
    ['=MAX( base.area ,base.area)', '=MAX( door.area ,door.area)'],
    ['=base.area +', '=door.area +'],
    ['=base.area + (5-1/2in', '=door.area + (5-1/2in'],
  ])('%s becomes %s', (before, after) => {
    expect(renamed(before)).toBe(after);
  });

  test.each([
    '="base.area"',
    '=base',
    '=base + 1',
    '=(base)',
    '=on.base.area',
    '=database.area',
    '=base_2.area',
    '=SUM(all(base).wall)',
    '=SUM(all(ring).base)',
    '=SUM(on(door, base).wall)',
    '=base(1)',
    'base.area',
  ])('%s names no row base and stays', (text) => {
    expect(renamed(text)).toBe(text);
  });

  test('a word alone in a call is a row unless it is a column or a choice', () => {
    expect(renamed('=MIX.QUANTITY(use, 2%, by_mass)', 'by_mass')).toBe(
      '=MIX.QUANTITY(use, 2%, by_mass)',
    );
    expect(renamed('=MAX(length, 2in)', 'length')).toBe('=MAX(length, 2in)');
    expect(renamed('=length.length', 'length')).toBe('=door.length');
  });

  test('a measure is named behind job, a setting of the same name is left alone', () => {
    expect(renamed('=job.cavity + 1in', 'cavity')).toBe('=job.door + 1in');
    expect(renamed('=job.temperature', 'temperature')).toBe('=job.temperature');
    expect(renamed('=book.dry_coat', 'dry_coat')).toBe('=book.door');
  });

  test('renaming there and back gives the same bytes', () => {
    const formula = fc
      .array(
        fc.constantFrom(
          'base.area',
          ' + ',
          'SKIN.AREA(base)',
          '(',
          ')',
          '"base"',
          ', ',
          '½',
          'on(base, ring).x',
        ),
      )
      .map((parts) => `=${parts.join('')}`);
    fc.assert(
      fc.property(formula, (text) => {
        const there = renamedInFormula(text, 'base', 'quite_new', () => false);
        expect(renamedInFormula(there, 'quite_new', 'base', () => false)).toBe(text);
      }),
    );
  });
});

describe('referencesOf', () => {
  test('names paths and lists in reading order, and which words stand alone as arguments', () => {
    const { expression } = parseFormula('=-base.area% + SKIN.AREA(on) * SUM(on(base, ring).wall)');
    const found = expression === undefined ? [] : referencesOf(expression);
    const words = found.map((one) =>
      one.kind === 'path'
        ? `${one.steps.map((step) => step.word).join('.')}${one.argument ? ' alone' : ''}`
        : `${one.form} ${one.row?.map((step) => step.word).join('.') ?? ''} ${one.column.word}`,
    );
    expect(words).toEqual(['base.area', 'on alone', 'on base wall']);
  });

  test('texts and numbers name nothing', () => {
    const { expression } = parseFormula('=SUM(all(ring).wall, 2) & "base.area"');
    expect(expression && referencesOf(expression)).toMatchObject([{ kind: 'list', form: 'all' }]);
  });
});
