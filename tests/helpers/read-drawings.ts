import DxfParser from 'dxf-parser';
import { Window } from 'happy-dom';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A line as somebody else's reader found it. */
export interface ReadLine {
  readonly layer: string;
  readonly points: readonly (readonly [number, number])[];
  readonly closed: boolean;
}

/** Area inside a line, without a sign, in the square of its unit. */
export function areaOf({ points }: ReadLine): number {
  let twice = 0;
  for (const [index, [x, y]] of points.entries()) {
    const [nextX, nextY] = points[(index + 1) % points.length] ?? [x, y];
    twice += x * nextY - nextX * y;
  }
  return Math.abs(twice / 2);
}

/** The paths of an SVG and its size in mm, read by a browser's document. */
export function readSvgLines(text: string): {
  readonly lines: readonly ReadLine[];
  readonly width: string;
  readonly viewBox: string;
} {
  const document = new new Window().DOMParser().parseFromString(text, 'image/svg+xml');
  const root = document.documentElement;
  const groups = [...root.querySelectorAll('g')];
  const lines = groups.flatMap((group) =>
    [...group.querySelectorAll('path')].flatMap((path) => {
      const d = path.getAttribute('d') ?? '';
      return d.split(/(?=M)/).map((loop): ReadLine => ({
        layer: group.getAttribute('inkscape:label') ?? '',
        closed: loop.endsWith('Z'),
        points: [...loop.matchAll(/[ML]([-\d.]+) ([-\d.]+)/g)].map(([, x, y]) => [
          Number(x),
          Number(y),
        ]),
      }));
    }),
  );
  return {
    lines,
    width: root.getAttribute('width') ?? '',
    viewBox: root.getAttribute('viewBox') ?? '',
  };
}

/** The polylines of a DXF. */
export function readDxfLines(text: string): {
  readonly lines: readonly ReadLine[];
  readonly units: unknown;
  readonly layers: readonly string[];
  readonly texts: readonly string[];
} {
  const dxf = new DxfParser().parseSync(text);
  if (dxf === null) throw new Error('no DXF');
  const lines = dxf.entities.flatMap((entity): ReadLine[] => {
    if (!('vertices' in entity) || !Array.isArray(entity.vertices)) return [];
    const vertices = entity.vertices as readonly { readonly x: number; readonly y: number }[];
    const points = vertices.map(({ x, y }) => [x, y] as const);
    return [{ layer: entity.layer, closed: 'shape' in entity && entity.shape === true, points }];
  });
  const texts = dxf.entities.flatMap((entity) =>
    'text' in entity && typeof entity.text === 'string' ? [entity.text] : [],
  );
  return {
    lines,
    units: dxf.header['$INSUNITS'],
    layers: Object.keys(dxf.tables.layer.layers),
    texts,
  };
}

/** A page of a PDF: its size and lines in mm from its lower left corner, and its words. */
export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly lines: readonly ReadLine[];
  readonly text: string;
}

const mmPerPoint = 25.4 / 72;

/** Subpaths of one drawing command: its operators and their numbers. */
function subpaths(operators: readonly number[], numbers: readonly number[]): readonly ReadLine[] {
  const lines: { layer: string; closed: boolean; points: [number, number][] }[] = [];
  let at = 0;
  for (const operator of operators) {
    if (operator === OPS.moveTo) lines.push({ layer: '', closed: false, points: [] });
    if (operator === OPS.moveTo || operator === OPS.lineTo) {
      const [x = 0, y = 0] = numbers.slice(at, at + 2);
      lines.at(-1)?.points.push([x * mmPerPoint, y * mmPerPoint]);
      at += 2;
    } else if (operator === OPS.closePath) {
      const last = lines.at(-1);
      if (last !== undefined) last.closed = true;
    } else if (operator === OPS.rectangle) at += 4;
  }
  return lines;
}

/** The pages of a PDF. */
export async function readPdfPages(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const document = await getDocument({ data: bytes.slice(), verbosity: 0 }).promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [, , width = 0, height = 0] = page.view;
    const { fnArray, argsArray } = await page.getOperatorList();
    const lines = fnArray.flatMap((operator, index) => {
      if (operator !== OPS.constructPath) return [];
      const [operators, numbers] = argsArray[index] as [number[], number[]];
      return subpaths(operators, numbers);
    });
    const { items } = await page.getTextContent();
    const text = items.map((item) => ('str' in item ? item.str : '')).join(' ');
    pages.push({ width: width * mmPerPoint, height: height * mmPerPoint, lines, text });
  }
  await document.destroy();
  return pages;
}
