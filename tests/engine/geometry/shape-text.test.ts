import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  readShape,
  shapeText,
  showShape,
  validShape,
} from '../../../extension/engine/geometry/shape-text.ts';
import type { Shape } from '../../../extension/engine/geometry/shape.ts';

const settings = { units: 'in', currency: 'USD' } as const;
const metric = { units: 'mm', currency: 'EUR' } as const;
const inch = 25.4;

function read(text: string, strict = false) {
  return readShape(text, { settings, strict });
}

describe('readShape', () => {
  test.each([
    ['circle(8 in)', 'circle(8 in)', { kind: 'circle', diameter: 8 * inch }],
    ['oval(9in,6in)', 'oval(9 in, 6 in)', { kind: 'oval', length: 9 * inch, width: 6 * inch }],
    ['rect(24", 16")', 'rect(24 in, 16 in)', { kind: 'rect', length: 24 * inch, width: 16 * inch }],
    [
      ' RoundRect( 26 , 15 in, 50.8 mm ) ',
      'roundrect(26 in, 15 in, 50.8 mm)',
      { kind: 'roundrect', length: 26 * inch, width: 15 * inch, radius: 50.8 },
    ],
  ])('%s is read as %s', (written, text, shape) => {
    expect(read(written)).toEqual({ ok: true, value: { shape, text } });
  });

  test.each([
    ['8 in', 'shape-not-read'],
    ['square(8 in)', 'shape-not-read'],
    ['circle(8 in', 'shape-not-read'],
    ['circle()', 'shape-sizes-miscounted'],
    ['circle(8 in, 6 in)', 'shape-sizes-miscounted'],
    ['oval(8 in)', 'shape-sizes-miscounted'],
    ['circle(abc)', 'value-not-a-number'],
    ['circle(8 g)', 'unit-wrong-dimension'],
    ['circle(0 in)', 'shape-size-not-positive'],
    ['rect(5 in, -3 in)', 'shape-size-not-positive'],
    ['roundrect(5 in, 3 in, -1/4 in)', 'shape-radius-negative'],
    ['roundrect(5 in, 3 in, 1 9/16 in)', 'shape-radius-too-large'],
  ])('%s is refused: %s', (text, code) => {
    const result = read(text);
    expect(result.ok ? '' : result.problem.code).toBe(code);
    expect(result.ok ? '' : result.problem.message).not.toMatch(/\{\w+\}/);
  });

  test('in a file every size has its unit', () => {
    const result = read('circle(8)', true);
    expect(result.ok ? '' : result.problem.code).toBe('unit-missing');
  });
});

describe('shapeText', () => {
  test('the text reads back to the same shape in both unit systems', () => {
    const size = fc.integer({ min: 1, max: 64 * 60 }).map((parts) => (parts * inch) / 64);
    fc.assert(
      fc.property(size, size, fc.constantFrom(settings, metric), (length, width, job) => {
        const shape: Shape = {
          kind: 'roundrect',
          length,
          width,
          radius: Math.min(length, width) / 2,
        };
        const back = readShape(shapeText(shape, job), { settings: job, strict: true });
        expect(back.ok).toBe(true);
        if (!back.ok) return;
        expect(shapeText(back.value.shape, job)).toBe(shapeText(shape, job));
      }),
    );
  });

  test('different shapes have different texts', () => {
    const a: Shape = { kind: 'circle', diameter: 203.2 };
    const b: Shape = { kind: 'circle', diameter: 203.2001 };
    expect(shapeText(a, settings)).not.toBe(shapeText(b, settings));
    expect(showShape(a, settings)).toBe(showShape(b, settings));
  });
});

describe('showShape', () => {
  test('sizes are shown like lengths', () => {
    expect(showShape({ kind: 'oval', length: 203.2, width: 100 }, settings)).toBe(
      'oval(8 in, 3 15/16 in)',
    );
    expect(showShape({ kind: 'oval', length: 203.2, width: 100 }, metric)).toBe(
      'oval(203.2 mm, 100 mm)',
    );
  });
});

describe('validShape', () => {
  test('a radius of half the short side is allowed, within what arithmetic leaves', () => {
    const shape: Shape = { kind: 'roundrect', length: 0.9, width: 0.3, radius: (0.1 + 0.2) / 2 };
    const valid = validShape(shape, settings);
    expect(valid.ok && valid.value).toMatchObject({ radius: 0.15 });
  });
});
