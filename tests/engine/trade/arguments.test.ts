import { describe, expect, test } from 'vitest';
import {
  missing,
  needed,
  numberIn,
  numbersOf,
  optional,
  quantityIn,
  shownWith,
  wordIn,
} from '../../../extension/engine/trade/arguments.ts';
import { length, plain } from '../../../extension/engine/units/dimension.ts';
import { contextOf, inches } from '../../helpers/trade-call.ts';

const depth = { kind: 'quantity', base: 25.4, dimension: length } as const;

describe('numberIn, quantityIn and wordIn', () => {
  test('only a quantity is a number', () => {
    expect(numberIn(depth)).toBe(25.4);
    expect(quantityIn(depth)).toEqual({ base: 25.4, dimension: length });
    for (const other of [undefined, { kind: 'text', text: '12' } as const, [depth]]) {
      expect(numberIn(other)).toBeUndefined();
    }
  });

  test('choices and texts are words', () => {
    expect(wordIn({ kind: 'choice', word: 'by_mass' })).toBe('by_mass');
    expect(wordIn({ kind: 'text', text: 'mm' })).toBe('mm');
    expect(wordIn(depth)).toBeUndefined();
    expect(wordIn(undefined)).toBeUndefined();
    expect(wordIn([depth])).toBeUndefined();
  });
});

describe('numbersOf', () => {
  const parameters = [
    needed('depth', length, 'Depth of the ring.'),
    optional({ name: 'layers', dimension: plain, help: 'Layers.' }, 1),
  ];

  test('what is left out or blank takes its value, what is needed is missed by name', () => {
    expect(numbersOf('X', parameters, [depth])).toEqual({
      ok: true,
      value: { depth: 25.4, layers: 1 },
    });
    const absent = numbersOf('X', parameters, [undefined, depth]);
    expect(absent.ok ? '' : absent.problem.message).toBe('X needs depth: depth of the ring.');
  });

  test('the sentence of a missing argument ends once', () => {
    expect(missing('X', needed('a', length, 'Size of it.')).message).toMatch(/[^.]\.$/);
  });
});

describe('shownWith', () => {
  test('values in refusals are shown as the job shows them', () => {
    expect(shownWith(contextOf(inches))(25.4, length)).toBe('1 in');
    expect(shownWith(contextOf(inches))(0.02, plain, '%')).toBe('2 %');
  });
});
