import type { Drawing, Mark } from '../../extension/engine/drawing/drawing.ts';
import { boxAround, type Point } from '../../extension/engine/geometry/outline.ts';
import { shapeOutline } from '../../extension/engine/geometry/shape-outline.ts';
import type { Shape } from '../../extension/engine/geometry/shape.ts';

function moved(points: readonly Point[], x: number, y: number): readonly Point[] {
  return points.map((point) => ({ x: point.x + x, y: point.y + y }));
}

/** A plate with a round hole, words and an arrow, in mm. */
export function plate(shape: Shape, hole: number): Drawing {
  const tolerance = 0.001;
  const outline = shapeOutline(shape, tolerance).points;
  const opening = moved(shapeOutline({ kind: 'circle', diameter: hole }, tolerance).points, 10, 5);
  const marks: readonly Mark[] = [
    { kind: 'line', role: 'outline', points: outline, closed: true },
    { kind: 'line', role: 'hole', points: opening, closed: true },
    {
      kind: 'line',
      role: 'grain',
      points: [
        { x: 0, y: -20 },
        { x: 0, y: 20 },
      ],
      closed: false,
      arrow: true,
    },
    {
      kind: 'text',
      role: 'note',
      at: { x: 0, y: 0 },
      text: 'Plate <1> & “left”, 5 °',
      height: 4,
      anchor: 'middle',
      angle: Math.PI / 2,
    },
  ];
  return {
    id: 'plate',
    title: 'Plate & hole',
    words: ['A plate with a hole.'],
    box: boxAround(outline),
    marks,
  };
}
