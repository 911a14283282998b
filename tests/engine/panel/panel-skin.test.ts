import { describe, expect, test } from 'vitest';
import { contourDrawing } from '../../../extension/engine/panel/contour-drawing.ts';
import {
  panelSkin,
  panelSkinQuestion,
  skinProfile,
  skinWords,
  type PanelSkin,
} from '../../../extension/engine/panel/panel-skin.ts';
import { workedOut } from '../../../extension/engine/skin/heavy-skin.ts';
import { linesOf } from '../../helpers/marks-of.ts';
import {
  placedPanel,
  placedRing,
  placedSnapshot,
  type PlacedJob,
} from '../../helpers/placed-job.ts';

function skinOf(job: PlacedJob = {}, hand: 'drawn' | 'left' = 'drawn'): PanelSkin {
  const panel = placedPanel(job, hand);
  const asked = panelSkinQuestion(panel, placedSnapshot(job).workbook);
  if (asked.state === 'none') throw new Error(asked.message);
  const skin = panelSkin(panel, workedOut(asked.question));
  if (skin === undefined) throw new Error('The skin did not come to rest.');
  return skin;
}

function areaOf({ points, triangles }: PanelSkin): number {
  const node = (at: number): readonly number[] => points.slice(3 * at, 3 * at + 3);
  let sum = 0;
  for (let at = 0; at < triangles.length; at += 3) {
    const [a = [], b = [], c = []] = triangles.slice(at, at + 3).map(node);
    const [u, v] = [b, c].map((end) => end.map((one, axis) => one - (a[axis] ?? 0)));
    const cross = [0, 1, 2].map((axis) => {
      const [i, j] = [(axis + 1) % 3, (axis + 2) % 3];
      return (u?.[i] ?? 0) * (v?.[j] ?? 0) - (u?.[j] ?? 0) * (v?.[i] ?? 0);
    });
    sum += Math.hypot(...cross) / 2;
  }
  return sum;
}

const skin = skinOf();
const panel = placedPanel();

describe('panelSkin', () => {
  test('the triangles that are drawn come to the area that is told', () => {
    expect(areaOf(skin) / skin.figures.skin).toBeCloseTo(1, 2);
  });

  test('it starts on the base’s front and ends at the lip', () => {
    const highest = Math.max(...skin.heights) / 25.4;
    // 2 in at the centre and half of 7 1/2 in × sin 15° more on the high side.
    expect(highest).toBeCloseTo(2 + 3.75 * Math.sin(Math.PI / 12), 2);
    expect(Math.min(...skin.heights)).toBeCloseTo(0, 6);
  });

  test('stretch is a figure of each node, of which some is more than none', () => {
    expect(skin.stretch).toHaveLength(skin.heights.length);
    expect(Math.max(...skin.stretch)).toBeGreaterThan(1.01);
  });

  test('the left hand is its mirror image', () => {
    const left = skinOf({}, 'left');
    expect(left.points[0]).toBeCloseTo(-(skin.points[0] ?? 0), 6);
    expect(left.points[1]).toBeCloseTo(skin.points[1] ?? 0, 6);
  });

  test('a skin that did not come to rest has no picture', () => {
    expect(panelSkin(panel, {})).toBeUndefined();
  });
});

describe('panelSkinQuestion', () => {
  test('a ring that reaches over the edge is told in a sentence', () => {
    const shape = 'rect(10 in, 6 in)';
    const asked = panelSkinQuestion(placedPanel({ shape }), placedSnapshot({ shape }).workbook);
    expect(asked.state === 'none' && asked.message.length > 20).toBe(true);
  });
});

describe('skinProfile', () => {
  test('the section of the skin runs from the edge of the base to the lip on both sides', () => {
    const lines = skinProfile(skin, placedRing(panel), panel);
    const points = lines.flat();
    // The base reaches 8 in to the front of the ring’s centre and 16 in to its rear.
    expect(Math.min(...points.map(({ x }) => x)) / 25.4).toBeCloseTo(-8, 1);
    expect(Math.max(...points.map(({ x }) => x)) / 25.4).toBeCloseTo(16, 1);
    const high = 2.25 + 3.75 * Math.sin(Math.PI / 12);
    expect(Math.max(...points.map(({ y }) => y)) / 25.4).toBeCloseTo(high, 2);
  });
});

describe('contourDrawing', () => {
  test('lines of equal height lie a quarter of an inch apart up to the lip’s high side', () => {
    const drawing = contourDrawing(panel, skin);
    const lines = linesOf(drawing, 'skin');
    // 2.97 in over the base: eleven heights of 1/4 in; some are more than one line.
    expect(lines.length).toBeGreaterThanOrEqual(11);
    expect(linesOf(drawing, 'ring')).toHaveLength(1);
    expect(drawing.words[0]).toBe('Lines of equal height above the base, 1/4 in apart.');
  });
});

describe('skinWords', () => {
  test('area with its bound, height, blank and stretch are said', () => {
    const words = skinWords(panel, skin).join(' ');
    for (const part of ['±', 'times the base', 'above the base', 'blank of', 'times as far'])
      expect(words).toContain(part);
  });
});
