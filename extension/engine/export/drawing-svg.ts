import type { Drawing, LineMark, Mark, TextMark } from '../drawing/drawing.ts';
import type { Point } from '../geometry/outline.ts';
import { fileNumber, letterHeight, paperStyles, roles } from './drawing-styles.ts';
import { escaped } from './escaped.ts';

/** White round a drawing, in mm. */
const marginMm = 5;

/** Height of a capital as a share of a font's size. */
const capitalShare = 0.72;

/** From a point of the drawing to one of the page, whose y runs down. */
type ToPage = (point: Point) => Point;

function loopPath(points: readonly Point[], closed: boolean, toPage: ToPage): string {
  const steps = points.map((point, index) => {
    const { x, y } = toPage(point);
    return `${index === 0 ? 'M' : 'L'}${fileNumber(x)} ${fileNumber(y)}`;
  });
  return `${steps.join('')}${closed ? 'Z' : ''}`;
}

function rowOf({ row }: Mark): string {
  return row === undefined ? '' : ` data-row="${escaped(`${row.table}/${row.id}`)}"`;
}

function linePath(mark: LineMark, toPage: ToPage): string {
  const loops = [
    loopPath(mark.points, mark.closed, toPage),
    ...(mark.holes ?? []).map((hole) => loopPath(hole, true, toPage)),
  ];
  const arrow = mark.arrow === true ? ' marker-end="url(#arrow)"' : '';
  return `    <path d="${loops.join('')}"${arrow}${rowOf(mark)}/>`;
}

function textElement(mark: TextMark, toPage: ToPage): string {
  const { x, y } = toPage(mark.at);
  const size = (mark.height === 0 ? letterHeight : mark.height) / capitalShare;
  const turn = mark.angle === undefined ? 0 : (-mark.angle * 180) / Math.PI;
  const turned =
    turn === 0 ? '' : ` transform="rotate(${fileNumber(turn)} ${fileNumber(x)} ${fileNumber(y)})"`;
  const place = `x="${fileNumber(x)}" y="${fileNumber(y)}" font-size="${fileNumber(size)}"`;
  const anchor = mark.anchor === 'start' ? '' : ` text-anchor="${mark.anchor}"`;
  return `    <text ${place}${anchor} stroke="none" fill="black"${turned}${rowOf(mark)}>${escaped(mark.text)}</text>`;
}

function layer(role: (typeof roles)[number], marks: readonly Mark[], toPage: ToPage): string {
  const { width, dashes, grey } = paperStyles[role];
  const shade = Math.round(grey * 255);
  const colour = grey === 0 ? 'black' : `rgb(${[shade, shade, shade].join(',')})`;
  const dashed = dashes.length === 0 ? '' : ` stroke-dasharray="${dashes.join(' ')}"`;
  const drawn = marks.map((mark) =>
    mark.kind === 'line' ? linePath(mark, toPage) : textElement(mark, toPage),
  );
  return [
    `  <g id="${role}" inkscape:groupmode="layer" inkscape:label="${role}" stroke="${colour}" stroke-width="${String(width)}"${dashed}>`,
    ...drawn,
    '  </g>',
  ].join('\n');
}

/**
 * A drawing as an SVG at full size: black on white, one unit is 1 mm, a group for each role as a layer
 * of that name.
 *
 * @source W3C, Scalable Vector Graphics (SVG) 1.1
 */
export function drawingSvg(drawing: Drawing): string {
  const { left, bottom, right, top } = drawing.box;
  const [across, down] = [right - left + 2 * marginMm, top - bottom + 2 * marginMm].map(fileNumber);
  const toPage: ToPage = ({ x, y }) => ({ x: x - left + marginMm, y: top - y + marginMm });
  const layers = roles.flatMap((role) => {
    const marks = drawing.marks.filter((mark) => mark.role === role);
    return marks.length === 0 ? [] : [layer(role, marks, toPage)];
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:inkscape="http://www.inkscape.org/namespaces/inkscape" width="${across ?? ''}mm" height="${down ?? ''}mm" viewBox="0 0 ${across ?? ''} ${down ?? ''}" fill="none" stroke-linejoin="round" font-family="sans-serif">`,
    `  <title>${escaped(drawing.title)}</title>`,
    `  <desc>${escaped(drawing.words.join(' '))}</desc>`,
    '  <defs><marker id="arrow" viewBox="0 0 10 10" refX="10" refY="5" markerWidth="12" markerHeight="12" orient="auto-start-reverse"><path d="M0 1L10 5L0 9Z" fill="black" stroke="none"/></marker></defs>',
    `  <rect width="${across ?? ''}" height="${down ?? ''}" fill="white"/>`,
    ...layers,
    '</svg>',
    '',
  ].join('\n');
}
