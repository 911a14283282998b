import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  blanksOnSheet,
  mergedSizes,
  rollLayout,
  timesInto,
} from '../../../extension/engine/estimate/layout.ts';

const inch = 25.4;

function blank(length: number, width: number, count: number) {
  return { length: length * inch, width: width * inch, count };
}

function inchesOfRoll(
  width: number,
  blanks: readonly ReturnType<typeof blank>[],
  turns = true,
): number {
  const layout = rollLayout({ width: width * inch, blanks, turns });
  return layout.fits ? layout.length / inch : Number.NaN;
}

describe('rollLayout', () => {
  // Derived: 24 × 30 in panel, 1/4 in edge, 1 in turn and 1 in grip all round, two of them off 54 in goods.
  test('two vinyl blanks of 28 1/2 × 34 1/2 in take 57 in of a 54 in bolt', () => {
    expect(inchesOfRoll(54, [blank(28.5, 34.5, 2)])).toBeCloseTo(57, 9);
    expect(inchesOfRoll(54, [blank(34.5, 28.5, 2)])).toBeCloseTo(57, 9);
  });

  test('with a nap that runs one way the same blanks take 69 in', () => {
    expect(inchesOfRoll(54, [blank(34.5, 28.5, 2)], false)).toBeCloseTo(69, 9);
  });

  test('two cloth blanks lie side by side', () => {
    expect(inchesOfRoll(60, [blank(30.5, 19.5, 2)])).toBeCloseTo(30.5, 9);
  });

  test('small blanks use the room beside large ones', () => {
    expect(inchesOfRoll(66, [blank(5.75, 5.75, 2), blank(10.5, 10.5, 2)])).toBeCloseTo(10.5, 9);
  });

  test('a blank wider than the bolt is named', () => {
    const tooWide = blank(60, 70, 1);
    const layout = rollLayout({ width: 54 * inch, blanks: [tooWide], turns: true });
    expect(layout).toEqual({ fits: false, tooWide });
  });

  test('a blank as wide as the bolt fits it', () => {
    expect(inchesOfRoll(54, [blank(10, 54, 3)], false)).toBeCloseTo(30, 9);
  });

  const anyBlanks = fc.array(
    fc.record({
      length: fc.integer({ min: 20, max: 900 }),
      width: fc.integer({ min: 20, max: 900 }),
      count: fc.integer({ min: 1, max: 9 }),
    }),
    { minLength: 1, maxLength: 5 },
  );

  test('the roll is never smaller than the blanks, and no row is longer than it must be', () => {
    fc.assert(
      fc.property(anyBlanks, fc.boolean(), (blanks, turns) => {
        const layout = rollLayout({ width: 900, blanks, turns });
        if (!layout.fits) throw new Error('every blank fits');
        const area = blanks.reduce(
          (sum, { length, width, count }) => sum + length * width * count,
          0,
        );
        expect(layout.length * 900).toBeGreaterThanOrEqual(area - 1e-6);
        const alone = blanks.reduce((sum, each) => {
          const one = rollLayout({ width: 900, blanks: [each], turns });
          return sum + (one.fits ? one.length : 0);
        }, 0);
        expect(layout.length).toBeLessThanOrEqual(alone + 1e-6);
      }),
    );
  });

  test('every blank is laid once', () => {
    fc.assert(
      fc.property(anyBlanks, (blanks) => {
        const layout = rollLayout({ width: 900, blanks, turns: true });
        if (!layout.fits) throw new Error('every blank fits');
        for (const { blank: size, across, rows, beside } of layout.sizes) {
          expect(beside + across * rows).toBeGreaterThanOrEqual(size.count);
          expect(beside + across * (rows - 1)).toBeLessThan(size.count);
        }
      }),
    );
  });

  test('being free to turn blanks never takes more of the roll for one size', () => {
    fc.assert(
      fc.property(anyBlanks, ([first]) => {
        const blanks = first === undefined ? [] : [first];
        const free = rollLayout({ width: 900, blanks, turns: true });
        const bound = rollLayout({ width: 900, blanks, turns: false });
        expect(free.fits && bound.fits && free.length <= bound.length + 1e-9).toBe(true);
      }),
    );
  });
});

describe('mergedSizes', () => {
  test('blanks of one size are counted together', () => {
    const sizes = mergedSizes([blank(2, 3, 1), blank(4, 3, 1), blank(2, 3, 5), blank(1, 1, 0)]);
    expect(sizes).toEqual([blank(2, 3, 6), blank(4, 3, 1)]);
  });
});

describe('timesInto', () => {
  test('three times 8 goes into 24 although sixteenths do not add up exactly', () => {
    expect(timesInto(8 * inch, 24 * inch)).toBe(3);
    expect(timesInto(0.1, 0.3)).toBe(3);
    expect(timesInto(30, 29)).toBe(0);
    expect(timesInto(0, 5)).toBe(0);
  });
});

describe('blanksOnSheet', () => {
  const sheet = { length: 96, width: 48 };

  test('a 4 × 8 ft sheet takes nine blanks of 26 × 15 in, six if none may be turned', () => {
    expect(blanksOnSheet({ length: 26, width: 15 }, sheet, false)).toBe(9);
    expect(blanksOnSheet({ length: 15, width: 26 }, sheet, false)).toBe(6);
    expect(blanksOnSheet({ length: 15, width: 26 }, sheet, true)).toBe(9);
  });

  test('a blank larger than the sheet is not on it', () => {
    expect(blanksOnSheet({ length: 50, width: 50 }, sheet, true)).toBe(0);
  });
});
