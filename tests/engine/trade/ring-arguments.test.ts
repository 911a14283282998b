import { describe, expect, test } from 'vitest';
import {
  ringForm,
  shapeIn,
  shapeNamed,
  standingRing,
} from '../../../extension/engine/trade/ring-arguments.ts';
import { angle, length } from '../../../extension/engine/units/dimension.ts';
import { contextOf, inches } from '../../helpers/trade-call.ts';

const context = contextOf(inches);
const size = { kind: 'quantity', base: 200, dimension: length } as const;
const tilt = { kind: 'quantity', base: 0.3, dimension: angle } as const;
const oval = { kind: 'oval', length: 200, width: 100 } as const;

describe('ringForm', () => {
  test('a length is a circle; what is left out is flat and a round baffle', () => {
    expect(ringForm('X', { size, tilt: undefined, build: undefined }, context)).toEqual({
      ok: true,
      value: { shape: { kind: 'circle', diameter: 200 }, tilt: 0, build: 'round_baffle' },
    });
  });

  test('a shape is taken as it is', () => {
    const build = { kind: 'choice', word: 'square_wall' } as const;
    const form = ringForm('X', { size: { kind: 'shape', shape: oval }, tilt, build }, context);
    expect(form.ok && form.value).toEqual({ shape: oval, tilt: 0.3, build: 'square_wall' });
  });

  test('without a size there is no ring', () => {
    const form = ringForm('X', { size: undefined, tilt, build: undefined }, context);
    expect(form.ok ? '' : form.problem.code).toBe('argument-missing');
  });
});

describe('standingRing', () => {
  const form = { shape: oval, tilt: 0.3, build: 'round_baffle' } as const;

  test('a low side just on the base stands, one under it does not', () => {
    const least = 100 * Math.sin(0.3);
    expect(standingRing('X', least, { form, context }).ok).toBe(true);
    expect(standingRing('X', least - 0.1, { form, context }).ok).toBe(false);
  });
});

describe('shapeIn and shapeNamed', () => {
  test('only a shape is a shape', () => {
    expect(shapeIn({ kind: 'shape', shape: oval })).toBe(oval);
    expect(shapeIn(size)).toBeUndefined();
    expect(shapeNamed({ kind: 'circle', diameter: 203.2 }, context)).toBe('circle(8 in)');
  });
});
