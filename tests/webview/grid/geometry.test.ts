import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  columnEdges,
  headerHeight,
  lettersThatFit,
  paintedRange,
  rowHeight,
  scrollToShow,
} from '../../../webview/grid/geometry.ts';

describe('paintedRange', () => {
  test('every line that can be seen is painted, wherever the grid is scrolled', () => {
    fc.assert(
      fc.property(
        fc.nat(3000),
        fc.nat(80_000),
        fc.integer({ min: 50, max: 1500 }),
        (lines, top, height) => {
          const { from, to } = paintedRange({ top, height }, lines);
          const first = Math.floor(top / rowHeight);
          const last = Math.ceil((top + height) / rowHeight);
          for (let line = first; line < Math.min(last, lines); line += 1)
            expect(line >= from && line < to).toBe(true);
          expect(from).toBeGreaterThanOrEqual(0);
          expect(to).toBeLessThanOrEqual(lines);
        },
      ),
    );
  });

  test('2,000 rows take no more elements than fill the screen three times', () => {
    const { from, to } = paintedRange({ top: 20_000, height: 600 }, 2000);
    expect(to - from).toBeLessThan(75);
  });
});

describe('scrollToShow', () => {
  const edges = columnEdges([100, 200, 200, 200]);
  const viewport = { top: 240, left: 100, width: 500, height: 268 };

  test('a cell on screen scrolls nothing', () => {
    expect(scrollToShow(viewport, { line: 12, column: 2 }, edges)).toEqual({ top: 240, left: 100 });
  });

  test('a line below the edge comes up just into view', () => {
    const { top } = scrollToShow(viewport, { line: 40, column: 2 }, edges);
    expect(top).toBe(41 * rowHeight - (268 - headerHeight));
  });

  test('a column under the row header is uncovered', () => {
    expect(scrollToShow(viewport, { line: 12, column: 1 }, edges).left).toBe(0);
  });
});

describe('lettersThatFit', () => {
  test('a column of 80 px takes 8 letters of 13 px, and one narrower than its sides none', () => {
    expect(lettersThatFit(80, 13)).toBe(8);
    expect(lettersThatFit(80, 26)).toBe(4);
    expect(lettersThatFit(12, 13)).toBe(0);
  });
});
