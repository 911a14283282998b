import { describe, expect, test } from 'vitest';
import { knobStep, steppedText } from '../../../extension/engine/session/knob-step.ts';
import { length, volume } from '../../../extension/engine/units/dimension.ts';
import type { UnitSettings } from '../../../extension/engine/units/quantity.ts';
import { readQuantity } from '../../../extension/engine/units/read-quantity.ts';
import type { AnsweredCell } from '../../../extension/engine/workbook/answers.ts';

const inches: UnitSettings = { units: 'in', currency: 'USD' };
const metric: UnitSettings = { units: 'mm', currency: 'EUR' };

function cellOf(text: string, column: string, settings: UnitSettings): AnsweredCell {
  const read = readQuantity(text, { settings, wanted: 'any' });
  if (!read.ok) throw new Error(read.problem.message);
  const value = { kind: 'quantity', ...read.value.value } as const;
  return { column, text, origin: 'typed', formula: false, result: { state: 'value', value } };
}

/** Text one step down and one step up. */
function steps(text: string, column = 'depth', settings = inches): readonly unknown[] {
  const cell = cellOf(text, column, settings);
  return [steppedText(cell, -1, settings), steppedText(cell, 1, settings)];
}

describe('steppedText', () => {
  test.each([
    ['3 1/2 in', 'depth', ['3 3/8 in', '3 5/8 in']],
    ['1/4 in', 'thickness', ['3/16 in', '5/16 in']],
    ['15 deg', 'tilt', ['14 deg', '16 deg']],
    ['4', 'layers', ['3', '5']],
    ['2.5', 'qty', ['2.4', '2.6']],
    ['2 %', 'percent', ['1.75 %', '2.25 %']],
    ['30 min', 'minutes', ['25 min', '35 min']],
    ['12 USD', 'price', ['11 USD', '13 USD']],
    ['70 degF', 'temperature', ['69 degF', '71 degF']],
  ])('in an inch job %s (%s) steps to %j', (text, column, expected) => {
    expect(steps(text, column)).toEqual(expected);
  });

  test.each([
    ['90 mm', 'depth', ['88 mm', '92 mm']],
    ['6 mm', 'thickness', ['5 mm', '7 mm']],
    ['20 degC', 'temperature', ['19 degC', '21 degC']],
    ['12 EUR', 'price', ['11 EUR', '13 EUR']],
  ])('in a metric job %s (%s) steps to %j', (text, column, expected) => {
    expect(steps(text, column, metric)).toEqual(expected);
  });

  test('a computed figure goes to the next round one', () => {
    expect(steps('3.44 in')).toEqual(['3 3/8 in', '3 1/2 in']);
  });

  test('a volume, a blank and a word have no step', () => {
    expect(steps('12 floz', 'use')).toEqual([undefined, undefined]);
    const blank: AnsweredCell = {
      column: 'depth',
      text: undefined,
      origin: 'default',
      formula: false,
      result: { state: 'blank' },
    };
    expect(steppedText(blank, 1, inches)).toBeUndefined();
  });
});

describe('knobStep', () => {
  test('boards and gaps go by 1/16 in, sizes by 1/8 in', () => {
    expect(knobStep({ base: 6, dimension: length }, 'thickness', inches)).toEqual({
      base: 25.4 / 16,
      unit: 'in',
    });
    expect(knobStep({ base: 60, dimension: length }, 'depth', inches)?.base).toBe(25.4 / 8);
    expect(knobStep({ base: 60, dimension: volume }, 'use', inches)).toBeUndefined();
  });
});
