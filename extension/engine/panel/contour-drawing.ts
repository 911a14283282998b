import type { Drawing, Mark } from '../drawing/drawing.ts';
import { boxAround, type Point } from '../geometry/outline.ts';
import { levelLines } from './level-lines.ts';
import { lengthText, letteringOf, line, loop, reached, words } from './marks.ts';
import { skinWords, type PanelSkin } from './panel-skin.ts';
import type { PicturedPanel } from './pictured-panel.ts';

/** Heights from one contour to the next, in mm: 1/4 in or 5 mm. */
function stepOf({ settings }: PicturedPanel): number {
  return settings.units === 'in' ? 25.4 / 4 : 5;
}

function planPoints(flat: readonly number[]): readonly Point[] {
  return flat.flatMap((x, index): readonly Point[] =>
    index % 3 === 0 ? [{ x, y: flat[index + 1] ?? 0 }] : [],
  );
}

/** The skin from the front as lines of equal height above the base, each with its figure. */
export function contourDrawing(panel: PicturedPanel, skin: PanelSkin): Drawing {
  const outlines = skin.edges.map(planPoints);
  const box = boxAround(outlines.flat());
  const lettering = letteringOf(Math.max(box.right - box.left, box.top - box.bottom));
  const step = stepOf(panel);
  const highest = skin.heights.reduce((most, one) => Math.max(most, one), 0);
  const contours: Mark[] = [];
  for (let level = step; level < highest; level += step) {
    for (const points of levelLines(skin, (node) => skin.heights[node] ?? 0, level)) {
      contours.push(line('skin', points));
      const middle = points[Math.floor(points.length / 2)];
      if (middle === undefined || points.length < 8) continue;
      contours.push(
        words('note', middle, lengthText(level, panel.settings), {
          height: lettering.height * 0.7,
        }),
      );
    }
  }
  const marks: readonly Mark[] = [
    ...outlines.map((points, index) => loop(index === 0 ? 'outline' : 'ring', points)),
    ...contours,
  ];
  return {
    id: panel.hand === 'drawn' ? 'skin' : `skin_${panel.hand}`,
    title: `${panel.name}: skin`,
    words: [
      `Lines of equal height above the base, ${lengthText(step, panel.settings)} apart.`,
      ...skinWords(panel, skin),
    ],
    box: boxAround(reached(marks)),
    marks,
  };
}
