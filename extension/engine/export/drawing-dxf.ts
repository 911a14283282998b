import type { Drawing, LineMark, Mark, Role, TextMark } from '../drawing/drawing.ts';
import type { Point } from '../geometry/outline.ts';
import { fileNumber, letterHeight, paperStyles, roles } from './drawing-styles.ts';

/** A code and its value: what a DXF is made of. */
type Group = readonly [number, string | number];

/** Line types of the file: those that an old reader knows by their pattern. */
const lineTypes = { full: 'CONTINUOUS', dashed: 'DASHED' } as const;

function layerName(role: Role): string {
  return role.toUpperCase();
}

function mm(value: number): string {
  return fileNumber(value);
}

function header({ box }: Drawing): readonly Group[] {
  const corner = (name: string, x: number, y: number): readonly Group[] => [
    [9, name],
    [10, mm(x)],
    [20, mm(y)],
    [30, 0],
  ];
  return [
    [0, 'SECTION'],
    [2, 'HEADER'],
    [9, '$ACADVER'],
    [1, 'AC1009'],
    // 4 is millimetres; readers that do not know it take one unit for a mm by the note in the file.
    [9, '$INSUNITS'],
    [70, 4],
    ...corner('$EXTMIN', box.left, box.bottom),
    ...corner('$EXTMAX', box.right, box.top),
    [0, 'ENDSEC'],
  ];
}

function lineTypeTable(): readonly Group[] {
  return [
    [0, 'TABLE'],
    [2, 'LTYPE'],
    [70, 2],
    [0, 'LTYPE'],
    [2, lineTypes.full],
    [70, 0],
    [3, 'Solid line'],
    [72, 65],
    [73, 0],
    [40, 0],
    [0, 'LTYPE'],
    [2, lineTypes.dashed],
    [70, 0],
    [3, 'Dashed line'],
    [72, 65],
    [73, 2],
    [40, 6],
    [49, 4],
    [49, -2],
    [0, 'ENDTAB'],
  ];
}

function tables(used: readonly Role[]): readonly Group[] {
  const layers = used.flatMap((role): readonly Group[] => [
    [0, 'LAYER'],
    [2, layerName(role)],
    [70, 0],
    // 7 is black on white and white on black.
    [62, 7],
    [6, paperStyles[role].dashes.length === 0 ? lineTypes.full : lineTypes.dashed],
  ]);
  return [
    [0, 'SECTION'],
    [2, 'TABLES'],
    ...lineTypeTable(),
    [0, 'TABLE'],
    [2, 'LAYER'],
    [70, used.length],
    ...layers,
    [0, 'ENDTAB'],
    [0, 'ENDSEC'],
  ];
}

function polyline(points: readonly Point[], closed: boolean, role: Role): readonly Group[] {
  const layer = layerName(role);
  return [
    [0, 'POLYLINE'],
    [8, layer],
    [66, 1],
    [10, 0],
    [20, 0],
    [30, 0],
    [70, closed ? 1 : 0],
    ...points.flatMap(({ x, y }): readonly Group[] => [
      [0, 'VERTEX'],
      [8, layer],
      [10, mm(x)],
      [20, mm(y)],
      [30, 0],
    ]),
    [0, 'SEQEND'],
    [8, layer],
  ];
}

function lineGroups(mark: LineMark): readonly Group[] {
  return [
    ...polyline(mark.points, mark.closed, mark.role),
    ...(mark.holes ?? []).flatMap((hole) => polyline(hole, true, mark.role)),
  ];
}

/** Signs beyond ASCII as an old reader takes them: `%%d` for degrees, `\U+xxxx` for the rest. */
function dxfText(text: string): string {
  return Array.from(text.replaceAll('°', '%%d'), (sign) => {
    const code = sign.codePointAt(0) ?? 0;
    if (code < 32) return ' ';
    return code < 127 ? sign : `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
  }).join('');
}

function textGroups({ role, at, text, height, anchor, angle }: TextMark): readonly Group[] {
  const aligned = { start: 0, middle: 1, end: 2 }[anchor];
  const place: readonly Group[] = [
    [10, mm(at.x)],
    [20, mm(at.y)],
    [30, 0],
  ];
  const second: readonly Group[] = [
    [72, aligned],
    [11, mm(at.x)],
    [21, mm(at.y)],
    [31, 0],
  ];
  return [
    [0, 'TEXT'],
    [8, layerName(role)],
    ...place,
    [40, mm(height === 0 ? letterHeight : height)],
    [1, dxfText(text)],
    [50, fileNumber(((angle ?? 0) * 180) / Math.PI)],
    ...(aligned === 0 ? [] : second),
  ];
}

function markGroups(mark: Mark): readonly Group[] {
  return mark.kind === 'line' ? lineGroups(mark) : textGroups(mark);
}

/**
 * A drawing as an ASCII DXF of release 12, which every cutting program reads: one unit is 1 mm, a layer
 * for each role.
 *
 * @source AutoCAD DXF reference, release 12 (POLYLINE with VERTEX and SEQEND)
 */
export function drawingDxf(drawing: Drawing): string {
  const used = roles.filter((role) => drawing.marks.some((mark) => mark.role === role));
  const groups: readonly Group[] = [
    [999, dxfText(`${drawing.title}. One unit is 1 mm.`)],
    ...header(drawing),
    ...tables(used),
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...drawing.marks.flatMap(markGroups),
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ];
  return groups.map(([code, value]) => `${String(code)}\n${String(value)}\n`).join('');
}
