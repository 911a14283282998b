import type { PdfElement } from '../pdf-objects.ts';
import { elementIn, heightOf, type Block } from './pdf-flow.ts';
import { flatContent, type Content, type Html } from './html.ts';
import { classesOf, runsOf, widthsOf, wrapped, type Face, type Line } from './pdf-text.ts';

const gap = 10;
const padding = 2.5;
const face: Face = { font: 'F1', size: 9.5 };
const headFace: Face = { font: 'F2', size: 9 };

interface Cell {
  readonly look: readonly string[];
  readonly type: 'TH' | 'TD';
  readonly face: Face;
  /** What stands below each other in the cell. */
  readonly parts: readonly (readonly Content[])[];
}

interface Row {
  readonly cells: readonly Cell[];
  readonly strong: boolean;
  readonly group: boolean;
}

function childrenOf(content: readonly Content[], name: string): readonly Html[] {
  return flatContent(content).filter(
    (one): one is Html => typeof one !== 'string' && one.name === name,
  );
}

/** A `div` in a cell begins a line of its own. */
function partsOf(content: readonly Content[]): readonly (readonly Content[])[] {
  const parts: Content[][] = [[]];
  for (const one of flatContent(content)) {
    const below = typeof one !== 'string' && one.name === 'div';
    if (below) parts.push([one], []);
    else parts.at(-1)?.push(one);
  }
  return parts.filter((part) => part.length > 0);
}

function rowOf(row: Html, face: Face): Row {
  const classes = classesOf(row);
  const strong = classes.includes('strong');
  const group = classes.includes('group');
  const bold = strong || group;
  const cells = flatContent(row.content).flatMap((one): readonly Cell[] => {
    if (typeof one === 'string') return [];
    return [
      {
        look: classesOf(one),
        type: one.name === 'th' ? 'TH' : 'TD',
        face: bold ? { ...face, font: 'F2' } : face,
        parts: partsOf(one.content),
      },
    ];
  });
  return { cells, strong, group };
}

interface Column {
  /** A few words: broken between them, and no narrower than the widest. */
  readonly words: boolean;
  readonly fixed: boolean;
  readonly most: number;
  readonly least: number;
}

/** Columns of words take no more than this where names are long. */
const wordsWidth = 90;

/** Widths of the columns: figures as wide as they are, the rest shares what is left by what it asks for. */
function columnWidths(rows: readonly Row[], width: number): readonly number[] {
  const full = rows.filter(({ group }) => !group);
  const count = Math.max(0, ...full.map(({ cells }) => cells.length));
  const columns = Array.from({ length: count }, (_, index): Column => {
    const cells = full.flatMap(({ cells }) => cells[index] ?? []);
    const measured = cells.flatMap((cell) =>
      cell.parts.map((part) => widthsOf(runsOf(part, cell.face))),
    );
    const looks = new Set(cells.flatMap(({ look }) => look));
    return {
      words: looks.has('s'),
      fixed: ['n', 'c', 'w'].some((one) => looks.has(one)),
      most: Math.max(0, ...measured.map(({ whole }) => whole)) + 1,
      least: Math.max(0, ...measured.map(({ word }) => word)) + 1,
    };
  });
  const room = width - gap * Math.max(0, count - 1);
  const all = columns.reduce((sum, { most }) => sum + most, 0);
  if (all <= room) return spread(columns, room);
  return narrowed(columns, room);
}

/** Widths where not everything has its room: names give way first. */
function narrowed(wanted: readonly Column[], room: number): readonly number[] {
  const columns = wanted.map((column) =>
    column.words
      ? { ...column, fixed: true, most: Math.min(column.most, Math.max(column.least, wordsWidth)) }
      : column,
  );
  const all = columns.reduce((sum, { most }) => sum + most, 0);
  const fixed = columns.reduce((sum, column) => sum + (column.fixed ? column.most : 0), 0);
  const loose = columns.reduce((sum, column) => sum + (column.fixed ? 0 : column.most), 0);
  const least = columns.reduce(
    (sum, column) => sum + (column.fixed ? 0 : Math.min(column.least, 70)),
    0,
  );
  // Figures give way only where the words beside them would have no room at all.
  if (fixed + least > room || loose === 0) return columns.map(({ most }) => (most / all) * room);
  const spare = room - fixed - loose;
  if (spare < 0) {
    return columns.map((column) =>
      column.fixed ? column.most : (column.most / loose) * (room - fixed),
    );
  }
  // The names have their room: what is left goes to the words that gave way.
  const words = columns.filter((column) => column.words).length;
  return columns.map(({ most, words: gave }) => (gave ? most + spare / words : most));
}

/** What is left over goes to the words, so that figures stand at the right edge. */
function spread(
  columns: readonly { readonly fixed: boolean; readonly most: number }[],
  room: number,
): readonly number[] {
  const all = columns.reduce((sum, { most }) => sum + most, 0);
  const loose = columns.filter(({ fixed }) => !fixed).length;
  const more = loose === 0 ? 0 : (room - all) / loose;
  return columns.map(({ fixed, most }) => (fixed ? most : most + more));
}

interface Laid {
  readonly cell: Cell;
  readonly x: number;
  readonly width: number;
  readonly lines: readonly Line[];
}

function laidRow(row: Row, x: number, widths: readonly number[]): readonly Laid[] {
  let at = x;
  const whole = widths.reduce((sum, one) => sum + one + gap, -gap);
  return row.cells.map((cell, index) => {
    const width = row.group ? whole : (widths[index] ?? 0);
    const from = at;
    at += width + gap;
    const lines = cell.parts.flatMap((part) => wrapped(runsOf(part, cell.face), width, cell.face));
    return { cell, x: from, width, lines };
  });
}

function rowBlock(
  row: Row,
  of: {
    readonly x: number;
    readonly width: number;
    readonly widths: readonly number[];
    readonly element: PdfElement | undefined;
    readonly head?: Block;
  },
): Block {
  const laid = laidRow(row, of.x, of.widths);
  const height = Math.max(0, ...laid.map(({ lines }) => heightOf(lines))) + 2 * padding;
  const line =
    row.cells[0]?.type === 'TH' && !row.group ? { width: 1, grey: 0 } : { width: 0.5, grey: 0.7 };
  const cells = laid.map((one) => ({
    ...one,
    element: of.element === undefined ? undefined : elementIn(of.element, one.cell.type),
  }));
  return {
    height,
    before: row.group ? 5 : 0,
    keep: row.group,
    ...(of.head === undefined ? {} : { head: of.head }),
    draw: (pen, y) => {
      if (row.strong) pen.rule(of.x, of.x + of.width, y, { width: 1, grey: 0 });
      for (const { cell, x, width, lines, element } of cells) {
        if (lines.length === 0) continue;
        const right = cell.look.includes('n') ? { right: x + width } : {};
        const draw = (): void => {
          pen.lines(lines, { x, y: y + padding - 1, ...right });
        };
        if (element === undefined) pen.unread(draw);
        else pen.marked(element, draw);
      }
      pen.rule(of.x, of.x + of.width, y + height, line);
    },
  };
}

/** A table as blocks, a row each; its head stands again on each page that it goes on over. */
export function tableBlocks(
  table: Html,
  of: { readonly x: number; readonly width: number; readonly parent: PdfElement },
): readonly Block[] {
  const heads = childrenOf(table.content, 'thead').flatMap(({ content }) =>
    childrenOf(content, 'tr'),
  );
  const bodies = childrenOf(table.content, 'tbody').flatMap(({ content }) =>
    childrenOf(content, 'tr'),
  );
  const headRows = heads.map((row) => rowOf(row, headFace));
  const rows = bodies.map((row) => rowOf(row, face));
  const widths = columnWidths([...headRows, ...rows], of.width);
  const element = elementIn(of.parent, 'Table');
  const [top] = headRows;
  const place = { x: of.x, width: of.width, widths };
  const again = top === undefined ? undefined : rowBlock(top, { ...place, element: undefined });
  const head = again === undefined ? {} : { head: again };
  return [
    ...headRows.map((row) => ({
      ...rowBlock(row, { ...place, element: elementIn(element, 'TR') }),
      before: 4,
      keep: true,
    })),
    ...rows.map((row, index) => {
      const block = rowBlock(row, { ...place, element: elementIn(element, 'TR'), ...head });
      return top === undefined && index === 0 ? { ...block, before: 4 } : block;
    }),
  ];
}
