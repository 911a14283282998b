import { mixCardsPaper } from './mix-cards.ts';
import { htmlPage, type PaperContent, type PaperGround, type PaperSource } from './paper.ts';
import { paperPdf, type PaperPdf, type Sheet } from './paper-pdf.ts';
import { quotePaper } from './quote.ts';
import { safetyPaper } from './safety.ts';
import { shopSheetPaper } from './shop-sheet.ts';
import { shoppingPaper } from './shopping.ts';

/** A paper that leaves the shop, or hangs in it. */
export interface Paper {
  /** Word for files and commands. */
  readonly id: 'quote' | 'shopping' | 'shopsheet' | 'mixcards' | 'safety';
  readonly name: string;
  readonly help: string;
  readonly page: (ground: PaperGround, source?: PaperSource) => string;
  readonly pdf: (ground: PaperGround, sheet: Sheet, source?: PaperSource) => PaperPdf;
}

interface Made extends Pick<Paper, 'id' | 'name' | 'help'> {
  readonly content: (ground: PaperGround, source?: PaperSource) => PaperContent;
}

const made: readonly Made[] = [
  {
    id: 'quote',
    name: 'Quote',
    help: 'For the client: scope, price, tax, payments, a line to sign. No costs.',
    content: quotePaper,
  },
  {
    id: 'shopping',
    name: 'Shopping list',
    help: 'What to buy, in packs.',
    content: shoppingPaper,
  },
  {
    id: 'shopsheet',
    name: 'Shop sheet',
    help: 'Order of work, cut list, rings, holes, shims, steps and tools.',
    content: shopSheetPaper,
  },
  {
    id: 'mixcards',
    name: 'Mix cards',
    help: 'A card for each pot of resin, to be read at the bench.',
    content: mixCardsPaper,
  },
  {
    id: 'safety',
    name: 'Safety sheet',
    help: 'Dangers of this job, with the limits that rules print.',
    content: safetyPaper,
  },
];

/** All papers, as HTML that prints on Letter and A4, and as PDF. */
export const papers: readonly Paper[] = made.map(({ id, name, help, content }) => ({
  ...{ id, name, help },
  page: (ground, source = {}) => htmlPage(content(ground, source), source),
  pdf: (ground, sheet, source = {}) => paperPdf(content(ground, source), sheet),
}));
