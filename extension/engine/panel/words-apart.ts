import type { Mark, TextMark } from '../drawing/drawing.ts';

/** Width of a letter, in parts of the height of capitals. */
const letterWidth = 0.8;

/** From one line of words to the next, in the same parts. */
const lineStep = 1.7;

function meets(one: TextMark, other: TextMark): boolean {
  const reach = ((one.text.length + other.text.length) / 2) * letterWidth;
  const height = Math.max(one.height, other.height);
  return (
    Math.abs(one.at.x - other.at.x) < reach * height &&
    Math.abs(one.at.y - other.at.y) < lineStep * height * 0.99
  );
}

/**
 * Marks whose words do not lie over one another: words that would are moved down, a line at a time.
 * Those that stand highest keep their places, of equals the one further left.
 */
export function wordsApart(marks: readonly Mark[]): readonly Mark[] {
  const texts = marks.filter((mark) => mark.kind === 'text');
  const settled = new Map<Mark, TextMark>();
  for (const text of texts.toSorted((a, b) => b.at.y - a.at.y || a.at.x - b.at.x)) {
    let moved = text;
    const below = (): boolean => [...settled.values()].some((other) => meets(moved, other));
    while (below())
      moved = { ...moved, at: { x: moved.at.x, y: moved.at.y - lineStep * moved.height } };
    settled.set(text, moved);
  }
  return marks.map((mark) => settled.get(mark) ?? mark);
}
