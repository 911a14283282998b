import { describe, expect, test } from 'vitest';
import { drawingSvg } from '../../../extension/engine/export/drawing-svg.ts';
import { openOutlineFiles } from '../../../extension/engine/geometry/outline-files.ts';
import { plate } from '../../helpers/drawn-parts.ts';
import { areaOf, readSvgLines } from '../../helpers/read-drawings.ts';

const shape = { kind: 'roundrect', length: 300, width: 200, radius: 40 } as const;
const svg = drawingSvg(plate(shape, 75));

describe('drawingSvg', () => {
  test('one unit of the page is a millimetre', () => {
    const { width, viewBox } = readSvgLines(svg);
    expect(width).toBe('310mm');
    expect(viewBox).toBe('0 0 310 210');
  });

  test('each role is a layer of its name, and areas agree to a ten-thousandth', () => {
    const { lines } = readSvgLines(svg);
    const area = (layer: string): number => {
      const found = lines.filter((line) => line.layer === layer && line.closed);
      expect(found).toHaveLength(1);
      return found[0] === undefined ? 0 : areaOf(found[0]);
    };
    expect(area('outline') / (300 * 200 - (4 - Math.PI) * 1600)).toBeCloseTo(1, 4);
    expect(area('hole') / ((Math.PI / 4) * 75 ** 2)).toBeCloseTo(1, 4);
  });

  test('up is up: the hole above and right of the middle is so on the page', () => {
    const hole = readSvgLines(svg).lines.find(({ layer }) => layer === 'hole');
    const ys = (hole?.points ?? []).map(([, y]) => y);
    expect((Math.min(...ys) + Math.max(...ys)) / 2).toBeCloseTo(105 - 5, 3);
  });

  test('a layer of it can be the outline of a job', () => {
    const files = openOutlineFiles(new Map([['plate.svg', svg]]));
    const answer = files.source({
      address: 'plate.svg#outline',
      unit: undefined,
      settings: { units: 'mm', currency: 'EUR' },
    });
    expect(answer.ok ? answer.value.area / (60_000 - (4 - Math.PI) * 1600) : 0).toBeCloseTo(1, 4);
  });

  test('words are told apart from marks of the file', () => {
    expect(svg).toContain('Plate &lt;1&gt; &amp; “left”, 5 °');
    expect(svg).toContain('<title>Plate &amp; hole</title>');
    expect(svg).toContain('transform="rotate(-90 ');
  });
});
