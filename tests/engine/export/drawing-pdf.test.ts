import { describe, expect, test } from 'vitest';
import { drawingPdf } from '../../../extension/engine/export/drawing-pdf.ts';
import { plate } from '../../helpers/drawn-parts.ts';
import { areaOf, readPdfPages, type ReadLine } from '../../helpers/read-drawings.ts';

const small = plate({ kind: 'circle', diameter: 150 }, 75);
const large = plate({ kind: 'rect', length: 700, width: 420 }, 180);

function length({ points }: ReadLine): number {
  const [[x1, y1] = [0, 0], [x2, y2] = [0, 0]] = points;
  return Math.hypot(x2 - x1, y2 - y1);
}

function level({ points }: ReadLine): boolean {
  return points.length === 2 && points[0]?.[1] === points[1]?.[1];
}

describe('drawingPdf', () => {
  test('a part smaller than the paper is one page after the overview, at full size', async () => {
    const [overview, page, ...more] = await readPdfPages(drawingPdf(small, 'letter'));
    expect(more).toEqual([]);
    expect(overview?.text).toContain('Overview, not at full size. 1 page follows');
    expect(page?.width).toBeCloseTo(215.9, 3);
    expect(page?.height).toBeCloseTo(279.4, 3);
    const areas = (page?.lines ?? []).filter(({ closed }) => closed).map(areaOf);
    const near = (area: number): boolean => areas.some((one) => Math.abs(one / area - 1) < 1e-4);
    expect(near((Math.PI / 4) * 150 ** 2)).toBe(true);
    expect(near((Math.PI / 4) * 75 ** 2)).toBe(true);
  });

  test('every page has lines of 100 mm and 4 in to check the printer by', async () => {
    for (const { lines, text } of await readPdfPages(drawingPdf(large, 'a4'))) {
      const lengths = lines.filter(level).map(length);
      expect(lengths.some((one) => Math.abs(one - 100) < 1e-3)).toBe(true);
      expect(lengths.some((one) => Math.abs(one - 101.6) < 1e-3)).toBe(true);
      expect(text).toContain('must measure 100 mm');
      expect(text).toContain('print at 100 %');
    }
  });

  test('tiles overlap, tell their place, and share the crosses at which they are joined', async () => {
    const pages = await readPdfPages(drawingPdf(large, 'a4'));
    expect(pages.length).toBeGreaterThan(5);
    const tiles = pages.slice(1).map(({ text, lines }) => {
      const [, row = '', rows = '', column = '', columns = ''] =
        /Row (\d+) of (\d+) from the top, column (\d+) of (\d+)/.exec(text) ?? [];
      const arms = lines.filter((line) => level(line) && Math.abs(length(line) - 8) < 1e-3);
      return {
        row: Number(row),
        rows: Number(rows),
        column: Number(column),
        columns: Number(columns),
        arms,
      };
    });
    const { rows = 0, columns = 0 } = tiles[0] ?? {};
    expect(rows).toBeGreaterThan(1);
    expect(columns).toBeGreaterThan(1);
    // An inner corner tile is joined on two sides at least, with three crosses on each.
    for (const { arms } of tiles) expect(arms.length).toBeGreaterThanOrEqual(6);
    const [first, second] = [1, 2].map((column) =>
      tiles.find((tile) => tile.row === 1 && tile.column === column),
    );
    const heights = (tile: typeof first): readonly number[] =>
      (tile?.arms ?? []).map(({ points }) => Math.round((points[0]?.[1] ?? 0) * 1000));
    const shared = heights(first).filter((height) => heights(second).includes(height));
    expect(new Set(shared).size).toBeGreaterThanOrEqual(3);
  });

  test('the whole of an outline is on its tiles together: they cover it', async () => {
    const pages = await readPdfPages(drawingPdf(large, 'letter'));
    const outline = pages
      .slice(1)
      .flatMap(({ lines }) => lines)
      .filter(({ closed, points }) => closed && points.length === 4)
      .map(areaOf)
      .filter((area) => Math.abs(area / (700 * 420) - 1) < 1e-4);
    expect(outline.length).toBe(pages.length - 1);
  });

  test('the same drawing gives the same bytes', () => {
    expect(drawingPdf(small, 'a4')).toEqual(drawingPdf(small, 'a4'));
  });

  test('words of the drawing are on its first page', async () => {
    const [overview] = await readPdfPages(drawingPdf(small, 'a4'));
    expect(overview?.text).toContain('Plate & hole');
    expect(overview?.text).toContain('A plate with a hole.');
  });
});
