import type { DrawnRow, Drawing, Mark } from '../../engine/index.ts';
import type { PictureMark, PictureView } from '../../protocol/panel-view.ts';

interface Place {
  readonly x: number;
  readonly y: number;
}

/** To 1/100 mm: no screen shows more, and the text that carries it stays short. */
function short(mm: number): number {
  return Math.round(mm * 100) / 100 + 0;
}

function flat(points: readonly Place[]): readonly number[] {
  return points.flatMap(({ x, y }) => [short(x), short(y)]);
}

function rowName(row: DrawnRow | undefined): string {
  return row === undefined ? '' : `${row.table}/${row.id}`;
}

function markView(mark: Mark): PictureMark {
  const { role } = mark;
  const row = rowName(mark.row);
  const owner = rowName(mark.owner ?? mark.row);
  if (mark.kind === 'line') {
    const { points, closed, filled = false, holes = [], arrow = false } = mark;
    const at = flat(points);
    return { kind: 'line', role, at, closed, filled, holes: holes.map(flat), arrow, row, owner };
  }
  const { at, text, height, anchor, angle = 0 } = mark;
  return {
    kind: 'text',
    role,
    at: [short(at.x), short(at.y)],
    text,
    height: short(height),
    anchor,
    angle: short((angle * 180) / Math.PI),
    row,
    owner,
  };
}

/** A drawing as the webview draws it. */
export function pictureView({ box, marks }: Drawing): PictureView {
  const { left, bottom, right, top } = box;
  return {
    box: { left: short(left), bottom: short(bottom), right: short(right), top: short(top) },
    marks: marks.map(markView),
  };
}
