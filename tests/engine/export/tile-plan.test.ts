import { describe, expect, test } from 'vitest';
import { tilePlan } from '../../../extension/engine/export/tile-plan.ts';
import { plate } from '../../helpers/drawn-parts.ts';

describe('tilePlan', () => {
  test('a sheet is turned where that saves sheets', () => {
    const wide = tilePlan(plate({ kind: 'rect', length: 250, width: 150 }, 40), 'letter');
    expect(wide.tiles).toHaveLength(1);
    expect(wide.page.width).toBeGreaterThan(wide.page.height);
  });

  test('tiles reach over the whole drawing', () => {
    const drawing = plate({ kind: 'rect', length: 900, width: 500 }, 40);
    const { tiles, rows, columns } = tilePlan(drawing, 'a4');
    expect(tiles.length).toBe(rows * columns);
    const { box } = drawing;
    expect(Math.min(...tiles.map(({ window }) => window.left))).toBeLessThanOrEqual(box.left);
    expect(Math.max(...tiles.map(({ window }) => window.right))).toBeGreaterThanOrEqual(box.right);
    expect(Math.min(...tiles.map(({ window }) => window.bottom))).toBeLessThanOrEqual(box.bottom);
    expect(Math.max(...tiles.map(({ window }) => window.top))).toBeGreaterThanOrEqual(box.top);
  });

  test('a sheet that no line and no part comes upon is left out', () => {
    const frame = plate({ kind: 'rect', length: 900, width: 900 }, 40);
    const bare = {
      ...frame,
      marks: frame.marks.map((mark) =>
        mark.role === 'outline' ? { ...mark, role: 'limit' as const } : mark,
      ),
    };
    const plan = tilePlan(bare, 'a4');
    expect(plan.tiles.length).toBeLessThan(plan.rows * plan.columns);
    const whole = tilePlan(frame, 'a4');
    expect(whole.tiles.length).toBe(whole.rows * whole.columns);
  });
});
