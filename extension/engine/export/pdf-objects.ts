/** A page of a PDF: its size in points and what is drawn on it. */
export interface PdfPage {
  readonly width: number;
  readonly height: number;
  readonly content: string;
}

/** Points to the mm: 72 are an inch. */
export const pointsPerMm = 72 / 25.4;

/** Signs of the standard fonts' encoding that lie outside ISO 8859-1. */
const winAnsi: Readonly<Record<string, number>> = {
  '–': 0x96,
  '—': 0x97,
  '‘': 0x91,
  '’': 0x92,
  '“': 0x93,
  '”': 0x94,
  '…': 0x85,
  '€': 0x80,
  '•': 0x95,
};

/** Signs that the standard fonts do not have, in words or near ones. */
const spelled: Readonly<Record<string, string>> = {
  '≈': 'about',
  '−': '-',
  '⅛': '1/8',
  '⅜': '3/8',
};

function encoded(sign: string): string {
  const near = spelled[sign];
  if (near !== undefined) return near;
  const code = winAnsi[sign] ?? sign.codePointAt(0) ?? 0;
  if (code < 32 || code > 255) return '?';
  if ('()\\'.includes(sign)) return `\\${sign}`;
  return code < 127 ? sign : `\\${code.toString(8).padStart(3, '0')}`;
}

/** A text as a PDF writes it, in brackets. */
export function pdfText(text: string): string {
  return `(${Array.from(text, encoded).join('')})`;
}

/** A number of points as a PDF writes it. */
export function pdfNumber(value: number): string {
  const text = value.toFixed(4).replace(/\.?0+$/, '');
  return text === '-0' ? '0' : text;
}

function bytesOf(text: string): Uint8Array {
  return Uint8Array.from(text, (sign) => sign.charCodeAt(0) & 0xff);
}

function pageObjects(pages: readonly PdfPage[], first: number): readonly string[] {
  return pages.flatMap(({ width, height, content }, index) => {
    const box = `[0 0 ${pdfNumber(width)} ${pdfNumber(height)}]`;
    const contents = first + index * 2 + 1;
    return [
      `<< /Type /Page /Parent 2 0 R /MediaBox ${box} /Resources << /Font << /F1 3 0 R >> >> /Contents ${String(contents)} 0 R >>`,
      `<< /Length ${String(content.length)} >>\nstream\n${content}\nendstream`,
    ];
  });
}

/**
 * A PDF of pages drawn with lines and the standard font Helvetica, that asks printers not to scale it.
 * The same pages always give the same bytes.
 *
 * @source ISO 32000-1 (PDF 1.7): file structure 7.5, page tree 7.7.3, viewer preferences 12.2
 */
export function pdfFile(title: string, pages: readonly PdfPage[]): Uint8Array {
  const firstPage = 5;
  const kids = pages.map((_, index) => `${String(firstPage + index * 2)} 0 R`).join(' ');
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R /ViewerPreferences << /PrintScaling /None >> >>',
    `<< /Type /Pages /Kids [${kids}] /Count ${String(pages.length)} >>`,
    '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /Encoding /WinAnsiEncoding >>',
    `<< /Title ${pdfText(title)} /Producer (Panelwright) >>`,
    ...pageObjects(pages, firstPage),
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
  text += `trailer\n<< /Size ${size} /Root 1 0 R /Info 4 0 R >>\nstartxref\n${String(table)}\n%%EOF\n`;
  return bytesOf(text);
}
