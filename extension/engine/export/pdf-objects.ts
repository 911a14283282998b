import { pdfText } from './pdf-letters.ts';

/** A page of a PDF: its size in points and what is drawn on it. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly content: string;
}

/** Points to the mm: 72 are an inch. */
export const pointsPerMm = 72 / 25.4;

/** A number of points as a PDF writes it. */
export function pdfNumber(value: number): string {
  const text = value.toFixed(4).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(text, (sign) => sign.charCodeAt(0) & 0xff);
}

/** An element of a tagged document: a heading, a paragraph, a table; its kids in the order of reading. */
export interface PdfElement {
  readonly type: string;
  readonly kids: (PdfElement | PdfMarked)[];
}

/** Content that a page marks with a number. */
export interface PdfMarked {
  readonly page: number;
  readonly mark: number;
}

const fonts = '<< /F1 3 0 R /F2 4 0 R >>';
const firstPage = 6;

function pageRef(index: number): string {
  return `${String(firstPage + index * 2)} 0 R`;
}

function pageObjects(pages: readonly PdfPage[], tagged: boolean): readonly string[] {
  return pages.flatMap(({ width, height, content }, index) => {
    const box = `[0 0 ${pdfNumber(width)} ${pdfNumber(height)}]`;
    const parents = tagged ? ` /StructParents ${String(index)} /Tabs /S` : '';
    return [
      `<< /Type /Page /Parent 2 0 R /MediaBox ${box} /Resources << /Font ${fonts} >> /Contents ${String(firstPage + index * 2 + 1)} 0 R${parents} >>`,
      `<< /Length ${String(content.length)} >>\nstream\n${content}\nendstream`,
    ];
  });
}

/** Objects of the tree of elements; the first is its root. Marks of a page lead back to their elements. */
function treeObjects(root: PdfElement, pages: number): readonly string[] {
  const start = firstPage + pages * 2;
  const objects: string[] = [''];
  const owners = Array.from({ length: pages }, (): string[] => []);
  const add = (element: PdfElement, parent: string): string => {
    const own = objects.push('') - 1;
    const ref = `${String(start + own)} 0 R`;
    const kids = element.kids.map((kid) => {
      if ('type' in kid) return add(kid, ref);
      const list = owners[kid.page];
      if (list !== undefined) list[kid.mark] = ref;
      return `<< /Type /MCR /Pg ${pageRef(kid.page)} /MCID ${String(kid.mark)} >>`;
    });
    objects[own] =
      `<< /Type /StructElem /S /${element.type} /P ${parent} /K [${kids.join(' ')}] >>`;
    return ref;
  };
  const top = add(root, `${String(start)} 0 R`);
  const numbers = owners.map((list, page) => `${String(page)} [${list.join(' ')}]`).join(' ');
  objects[0] = `<< /Type /StructTreeRoot /K ${top} /ParentTree << /Nums [${numbers}] >> /ParentTreeNextKey ${String(pages)} >>`;
  return objects;
}

function catalog(pages: number, tagged: boolean): string {
  const tree = String(firstPage + pages * 2);
  const tags = tagged ? ` /MarkInfo << /Marked true >> /StructTreeRoot ${tree} 0 R` : '';
  const look = tagged ? '/DisplayDocTitle true' : '/PrintScaling /None';
  return `<< /Type /Catalog /Pages 2 0 R /Lang (en) /ViewerPreferences << ${look} >>${tags} >>`;
}

function font(name: string): string {
  return `<< /Type /Font /Subtype /Type1 /BaseFont /${name} /Encoding /WinAnsiEncoding >>`;
}

/**
 * A PDF of pages drawn with lines and the standard font Helvetica. One that is tagged tells readers
 * aloud what is a heading, a paragraph, a row; one that is not asks printers not to scale it. The same
 * pages always give the same bytes.
 *
 * @source ISO 32000-1 (PDF 1.7): file structure 7.5, page tree 7.7.3, viewer preferences 12.2, tagged PDF 14.8
 */
export function pdfFile(title: string, pages: readonly PdfPage[], tags?: PdfElement): Uint8Array {
  const kids = pages.map((_, index) => pageRef(index)).join(' ');
  const objects = [
    catalog(pages.length, tags !== undefined),
    `<< /Type /Pages /Kids [${kids}] /Count ${String(pages.length)} >>`,
    font('Helvetica'),
    font('Helvetica-Bold'),
    `<< /Title ${pdfText(title)} /Producer (Panelwright) >>`,
    ...pageObjects(pages, tags !== undefined),
    ...(tags === undefined ? [] : treeObjects(tags, pages.length)),
  ];
  let text = '%PDF-1.7\n%\u00e2\u00e3\u00cf\u00d3\n';
  const places = objects.map((object, index) => {
    const place = text.length;
    text += `${String(index + 1)} 0 obj\n${object}\nendobj\n`;
    return place;
  });
  const table = text.length;
  const entries = places.map((place) => `${String(place).padStart(10, '0')} 00000 n \n`).join('');
  const size = String(objects.length + 1);
  text += `xref\n0 ${size}\n0000000000 65535 f \n${entries}`;
  text += `trailer\n<< /Size ${size} /Root 1 0 R /Info 5 0 R >>\nstartxref\n${String(table)}\n%%EOF\n`;
  return bytesOf(text);
}
