import { mixCardsPaper } from './mix-cards.ts';
import type { PaperContent, PaperGround, PaperSource } from './paper.ts';
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
  /** What it says of a job; HTML and PDF are both written from this. */
  readonly content: (ground: PaperGround, source?: PaperSource) => PaperContent;
}

/** All papers of one state of a job. */
export const papers: readonly Paper[] = [
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
    help: 'Order of work, cut list, bearings, rings, holes, shims, steps and tools.',
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
