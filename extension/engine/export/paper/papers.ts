import { mixCardsPaper } from './mix-cards.ts';
import type { PaperGround, PaperSource } from './paper.ts';
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
}

/** All papers, as HTML that prints on Letter and A4. */
export const papers: readonly Paper[] = [
  {
    id: 'quote',
    name: 'Quote',
    help: 'For the client: scope, price, tax, payments, a line to sign. No costs.',
    page: quotePaper,
  },
  {
    id: 'shopping',
    name: 'Shopping list',
    help: 'What to buy, in packs.',
    page: shoppingPaper,
  },
  {
    id: 'shopsheet',
    name: 'Shop sheet',
    help: 'Order of work, cut list, rings, holes, shims, steps and tools.',
    page: shopSheetPaper,
  },
  {
    id: 'mixcards',
    name: 'Mix cards',
    help: 'A card for each pot of resin, to be read at the bench.',
    page: mixCardsPaper,
  },
  {
    id: 'safety',
    name: 'Safety sheet',
    help: 'Dangers of this job, with the limits that rules print.',
    page: safetyPaper,
  },
];
