import type { Shape } from './argument-shape.ts';

/** Papers that can be written, by the word of their command. */
export type PaperCommand = 'quote' | 'shopping' | 'shopsheet' | 'mixcards' | 'safety';

const paperShape: Shape = {
  flags: [],
  values: ['--out', '--paper'],
  word: 'job file',
  least: 1,
  most: 1,
};

/** What the help of a paper says of where it is written. */
export const paperOut = `  --out    the file it is written to, a PDF where its name ends so; else the page goes to the standard output
  --paper  sheets of the PDF; letter for a job in inches, a4 for one in millimetres`;

/** How each paper is asked for. */
export const paperShapes: Readonly<Record<PaperCommand, Shape>> = {
  quote: paperShape,
  shopping: paperShape,
  shopsheet: paperShape,
  mixcards: paperShape,
  safety: paperShape,
};

/** True for the word of a paper. */
export function isPaper(command: string): command is PaperCommand {
  return Object.hasOwn(paperShapes, command);
}
