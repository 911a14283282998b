import type { Drawing, Mark } from '../../extension/engine/index.ts';
import { boxAround, type Box } from '../../extension/engine/geometry/outline.ts';

type Line = Extract<Mark, { readonly kind: 'line' }>;

/** Lines of one role, of one row where it is named. */
export function linesOf({ marks }: Drawing, role: Mark['role'], row?: string): readonly Line[] {
  return marks.filter(
    (mark): mark is Line =>
      mark.kind === 'line' && mark.role === role && (row === undefined || mark.row?.id === row),
  );
}

/** Texts of one role. */
export function textsOf({ marks }: Drawing, role: Mark['role']): readonly string[] {
  return marks.flatMap((mark) => (mark.kind === 'text' && mark.role === role ? [mark.text] : []));
}

/** Box of the first line of a role, in inches. */
export function inchBox(drawing: Drawing, role: Mark['role'], row?: string): Box {
  const [line] = linesOf(drawing, role, row);
  if (line === undefined) throw new Error(`The drawing has no ${role}.`);
  const { left, right, bottom, top } = boxAround(line.points);
  return { left: left / 25.4, right: right / 25.4, bottom: bottom / 25.4, top: top / 25.4 };
}
