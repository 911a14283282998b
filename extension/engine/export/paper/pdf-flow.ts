import type { PdfElement } from '../pdf-objects.ts';
import { leading, type Pen } from './pdf-pen.ts';
import type { Line } from './pdf-text.ts';

/** Something of a height that stands on one page whole. */
export interface Block {
  /** In points, as all lengths here. */
  readonly height: number;
  /** Room above it, but at the top of a page. */
  readonly before: number;
  /** Stands on the page of what comes after it. */
  readonly keep?: boolean;
  /** Is drawn again on top of each page that it goes on over. */
  readonly head?: Block;
  readonly draw: (pen: Pen, y: number) => void;
}

/** Height of lines of text. */
export function heightOf(lines: readonly Line[]): number {
  return lines.reduce((sum, { size }) => sum + size * leading, 0);
}

/** A new element at the end of another. */
export function elementIn(parent: PdfElement, type: string): PdfElement {
  const element: PdfElement = { type, kids: [] };
  parent.kids.push(element);
  return element;
}

function stackHeight(blocks: readonly Block[]): number {
  return blocks.reduce(
    (sum, { height, before }, index) => sum + height + (index > 0 ? before : 0),
    0,
  );
}

/** Blocks as one, that is not broken; a frame goes round it with room inside. */
export function stacked(
  blocks: readonly Block[],
  of: { readonly before: number; readonly frame?: { readonly x: number; readonly width: number } },
): Block {
  const { before, frame } = of;
  const room = frame === undefined ? 0 : framePadding;
  const height = stackHeight(blocks) + 2 * room;
  return {
    height,
    before,
    draw: (pen, top) => {
      if (frame !== undefined) pen.box(frame.x, top, { width: frame.width, height });
      let y = top + room;
      blocks.forEach((block, index) => {
        y += index > 0 ? block.before : 0;
        block.draw(pen, y);
        y += block.height;
      });
    },
  };
}

/** Room between a frame and what it goes round. */
export const framePadding = 9;

/** Blocks that must stand together: each that is kept with the next, with that. */
function chained(blocks: readonly Block[]): readonly (readonly Block[])[] {
  const chains: Block[][] = [];
  let open = false;
  for (const block of blocks) {
    const last = chains.at(-1);
    if (open && last !== undefined) last.push(block);
    else chains.push([block]);
    open = block.keep === true;
  }
  return chains;
}

/** A block with the place that it found. */
export interface Placed {
  readonly block: Block;
  readonly y: number;
}

/** Places blocks on pages from `top` to `bottom`; none but what is higher than a page stands over its edge. */
export function paged(
  blocks: readonly Block[],
  { top, bottom }: { readonly top: number; readonly bottom: number },
): readonly (readonly Placed[])[] {
  let page: Placed[] = [];
  const pages = [page];
  let y = top;
  const put = (block: Block): void => {
    if (page.length > 0) y += block.before;
    page.push({ block, y });
    y += block.height;
  };
  for (const chain of chained(blocks)) {
    const [first] = chain;
    const full = y + (first?.before ?? 0) + stackHeight(chain) > bottom;
    if (page.length > 0 && full) {
      page = [];
      pages.push(page);
      y = top;
      if (first?.head !== undefined) put(first.head);
    }
    for (const block of chain) put(block);
  }
  return pages;
}
