import type { Drawing } from '../../drawing/drawing.ts';
import { pdfText, textWidth } from '../pdf-letters.ts';
import { markCode } from '../pdf-marks.ts';
import { pdfNumber, pointsPerMm, type PdfElement, type PdfMarked } from '../pdf-objects.ts';
import { boxSide, type Line } from './pdf-text.ts';

/** Height of a line against its letters. */
export const leading = 1.3;

/** Draws on one page; y is in points from the page's top and grows downwards. */
export class Pen {
  readonly #page: number;
  readonly #height: number;
  readonly #codes: string[] = [];
  #marks = 0;

  constructor(page: number, height: number) {
    this.#page = page;
    this.#height = height;
  }

  get content(): string {
    return this.#codes.join('\n');
  }

  #y(y: number): string {
    return pdfNumber(this.#height - y);
  }

  /** What is drawn meanwhile belongs to an element of the document. */
  marked(element: PdfElement, draw: () => void): void {
    const mark: PdfMarked = { page: this.#page, mark: this.#marks };
    this.#marks += 1;
    element.kids.push(mark);
    this.#codes.push(`/${element.type} << /MCID ${String(mark.mark)} >> BDC`);
    draw();
    this.#codes.push('EMC');
  }

  /** What is drawn meanwhile is not read aloud: it has been before. */
  unread(draw: () => void): void {
    this.#codes.push('/Artifact BMC');
    draw();
    this.#codes.push('EMC');
  }

  /** What is drawn meanwhile says nothing: lines, boxes, page numbers. */
  #artifact(code: string): void {
    this.#codes.push(`/Artifact BMC\n${code}\nEMC`);
  }

  rule(from: number, to: number, y: number, of = { width: 0.6, grey: 0 }): void {
    const { width, grey } = of;
    this.#artifact(
      `[] 0 d ${pdfNumber(width)} w ${pdfNumber(grey)} G ${pdfNumber(from)} ${this.#y(y)} m ${pdfNumber(to)} ${this.#y(y)} l S`,
    );
  }

  box(x: number, y: number, size: { readonly width: number; readonly height: number }): void {
    const numbers = [x, this.#height - y - size.height, size.width, size.height].map(pdfNumber);
    this.#artifact(`[] 0 d 0.8 w 0 G ${numbers.join(' ')} re S`);
  }

  /** Lines of text from a top; each is moved to the right by what the width leaves, as it stands. */
  lines(
    lines: readonly Line[],
    at: { readonly x: number; readonly y: number; readonly right?: number },
  ): void {
    let { y } = at;
    for (const line of lines) {
      y += line.size * leading;
      let x = at.right === undefined ? at.x : at.right - line.width;
      for (const { text, font, size, box } of line.runs) {
        if (box === true) this.box(x, y - boxSide, { width: boxSide, height: boxSide });
        else
          this.#codes.push(
            `BT /${font} ${pdfNumber(size)} Tf 0 g 1 0 0 1 ${pdfNumber(x)} ${this.#y(y - size * 0.18)} Tm ${pdfText(text)} Tj ET`,
          );
        x += box === true ? boxSide : textWidth(text, font, size);
      }
    }
  }

  /** A drawing with its upper left corner here, in so many mm of paper to one of its own. */
  drawing({ box, marks }: Drawing, x: number, y: number, scale: number): void {
    const place = {
      x: x / pointsPerMm - box.left * scale,
      y: (this.#height - y) / pointsPerMm - box.top * scale,
      scale,
    };
    this.#codes.push('q 0 g', ...marks.map((mark) => markCode(mark, place)), 'Q');
  }

  /** Words that are no part of what is read, such as a page number. */
  aside(text: string, x: number, y: number, size: number): void {
    this.#artifact(
      `BT /F1 ${pdfNumber(size)} Tf 0 g 1 0 0 1 ${pdfNumber(x)} ${this.#y(y)} Tm ${pdfText(text)} Tj ET`,
    );
  }
}
