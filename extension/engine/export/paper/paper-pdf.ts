import { lackingSigns, textWidth } from '../pdf-letters.ts';
import { pdfFile, pointsPerMm, type PdfElement, type PdfPage } from '../pdf-objects.ts';
import { sheetSize, type Paper as Sheet } from '../tile-plan.ts';
import { flatContent, tag, type Content } from './html.ts';
import type { PaperContent } from './paper.ts';
import { blocksOf } from './pdf-blocks.ts';
import { paged } from './pdf-flow.ts';
import { Pen } from './pdf-pen.ts';

export type { Sheet };

/** A paper as a file, and the letters that its fonts do not have, each with what stands in for it. */
export interface PaperPdf {
  readonly bytes: Uint8Array;
  readonly lacking: ReadonlyMap<string, string>;
}

const margin = { side: 15 * pointsPerMm, top: 16 * pointsPerMm, bottom: 18 * pointsPerMm };

function allText(content: readonly Content[]): string {
  return flatContent(content)
    .map((one) => {
      if (typeof one === 'string') return one;
      const drawn = one.drawing?.marks.map((mark) => (mark.kind === 'text' ? mark.text : '')) ?? [];
      return [...drawn, allText(one.content)].join(' ');
    })
    .join(' ');
}

/** What a PDF in the standard fonts cannot show; empty where it shows all. */
export function lackingWords(lacking: ReadonlyMap<string, string>): string {
  if (lacking.size === 0) return '';
  const signs = [...lacking].map(([sign, near]) => {
    const code = (sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
    return `U+${code} as ${near}`;
  });
  return `This PDF’s fonts do not have every letter of the job; these are written otherwise: ${signs.join(', ')}. The same paper as HTML has them all.`;
}

/** The same for whoever writes the file: with the letters themselves. */
export function lackingSentence(lacking: ReadonlyMap<string, string>): string {
  if (lacking.size === 0) return '';
  const signs = [...lacking].map(([sign, near]) => `${sign} as ${near}`);
  return `The PDF’s fonts do not have every letter of the job; these are written otherwise: ${signs.join(', ')}. The same paper as HTML has them all.`;
}

/**
 * A paper as PDF, in the standard fonts, black on white: nothing is broken within a row or a card,
 * headings stay with what follows them and are tagged as such, heads of tables stand on each page. Letters
 * that the fonts do not have are told on the paper itself.
 */
export function paperPdf({ kind, title, main }: PaperContent, sheet: Sheet): PaperPdf {
  const size = sheetSize(sheet);
  const [width, height] = [size.width * pointsPerMm, size.height * pointsPerMm];
  const lacking = lackingSigns(allText([title, main]));
  const told = lackingWords(lacking);
  const root: PdfElement = { type: 'Document', kids: [] };
  const place = { x: margin.side, width: width - 2 * margin.side, parent: root };
  const blocks = blocksOf(
    [main, ...(told === '' ? [] : [tag('p', { class: 'warn' }, told)])],
    place,
  );
  const laid = paged(blocks, { top: margin.top, bottom: height - margin.bottom });
  const pages = laid.map((placed, index): PdfPage => {
    const pen = new Pen(index, height);
    for (const { block, y } of placed) block.draw(pen, y);
    const foot = `${String(index + 1)} / ${String(laid.length)}`;
    const end = width - margin.side - textWidth(foot, 'F1', 9);
    pen.aside(foot, end, height - 10 * pointsPerMm, 9);
    return { width, height, content: pen.content };
  });
  return { bytes: pdfFile(`${kind}: ${title}`, pages, root), lacking };
}
