import { describe, expect, test } from 'vitest';
import { drawingDxf } from '../../../extension/engine/export/drawing-dxf.ts';
import { plate } from '../../helpers/drawn-parts.ts';
import { areaOf, readDxfLines } from '../../helpers/read-drawings.ts';

const dxf = drawingDxf(plate({ kind: 'oval', length: 300, width: 200 }, 75));

describe('drawingDxf', () => {
  test('another reader finds closed lines on layers named after their roles, in millimetres', () => {
    const { lines, units, layers } = readDxfLines(dxf);
    expect(units).toBe(4);
    expect(layers).toEqual(['OUTLINE', 'HOLE', 'GRAIN', 'NOTE']);
    const area = (layer: string): number => {
      const found = lines.filter((line) => line.layer === layer && line.closed);
      expect(found).toHaveLength(1);
      return found[0] === undefined ? 0 : areaOf(found[0]);
    };
    expect(area('OUTLINE') / ((Math.PI / 4) * 300 * 200)).toBeCloseTo(1, 4);
    expect(area('HOLE') / ((Math.PI / 4) * 75 ** 2)).toBeCloseTo(1, 4);
    expect(lines.find(({ layer }) => layer === 'GRAIN')?.closed).toBe(false);
  });

  test('words stand in signs that old readers know', () => {
    expect(dxf).toContain('Plate <1> & \\U+201Cleft\\U+201D, 5 %%d');
    expect(readDxfLines(dxf).texts).toHaveLength(1);
    expect(dxf).toMatch(/^999\nPlate & hole\. One unit is 1 mm\.\n/);
  });
});
