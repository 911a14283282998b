import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { words } from '../../../extension/engine/panel/marks.ts';
import { wordsApart } from '../../../extension/engine/panel/words-apart.ts';
import type { TextMark } from '../../../extension/engine/drawing/drawing.ts';

const named = (text: string, x: number, y = 0): TextMark =>
  words('note', { x, y }, text, { height: 10 });

function overlap(one: TextMark, other: TextMark): boolean {
  const half = (mark: TextMark): number => mark.text.length * 4;
  const across = Math.abs(one.at.x - other.at.x) < half(one) + half(other);
  return across && Math.abs(one.at.y - other.at.y) < 10;
}

describe('wordsApart', () => {
  test('of two rings side by side the second one’s name stands a line lower', () => {
    const [left, right] = wordsApart([named('Midbass ring', 0), named('Tweeter ring', 40)]);
    expect(left).toEqual(named('Midbass ring', 0));
    expect(right).toMatchObject({ text: 'Tweeter ring', at: { x: 40, y: -17 } });
  });

  test('names with room between them stay where they are', () => {
    const marks = [named('Left', 0), named('Right', 200), named('Below', 0, -40)];
    expect(wordsApart(marks)).toEqual(marks);
  });

  test('whatever stands where, no words lie over others and none is lost', () => {
    const mark = fc
      .tuple(fc.string({ minLength: 1, maxLength: 12 }), fc.nat(100), fc.nat(60))
      .map(([text, x, y]) => named(text, x, y));
    fc.assert(
      fc.property(fc.array(mark, { maxLength: 8 }), (marks) => {
        const apart = wordsApart(marks) as readonly TextMark[];
        expect(apart.map(({ text }) => text)).toEqual(marks.map(({ text }) => text));
        apart.forEach((one, index) => {
          for (const other of apart.slice(index + 1)) expect(overlap(one, other)).toBe(false);
        });
      }),
    );
  });
});
