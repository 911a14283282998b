import { lackingSentence, papers, type PaperSource } from '../engine/index.ts';
import type { Request } from './arguments.ts';
import type { ReadJob } from './job.ts';

/** A paper as it is written, with what has to be said of it. */
interface MadePaper {
  readonly content: string | Uint8Array;
  readonly note: string;
}

/** The paper as PDF where the file's name ends so, else as a page of HTML; or a sentence why not. */
export function madePaper(
  { paper, out = '', sheet }: Extract<Request, { command: 'paper' }>,
  { snapshot }: ReadJob,
  source: PaperSource = {},
): MadePaper | string {
  const found = papers.find(({ id }) => id === paper);
  if (found === undefined) return `There is no paper ${paper}.`;
  if (!out.toLowerCase().endsWith('.pdf')) {
    if (sheet === undefined) return { content: found.page(snapshot, source), note: '' };
    return '--paper is for a PDF: give --out a name that ends in .pdf.';
  }
  const usual = snapshot.settings.units === 'in' ? 'letter' : 'a4';
  const size = sheet ?? usual;
  if (size !== 'letter' && size !== 'a4') return `--paper is letter or a4, not ${size}.`;
  const { bytes, lacking } = found.pdf(snapshot, size, source);
  const said = lackingSentence(lacking);
  return { content: bytes, note: said === '' ? '' : `panelwright: ${said}\n` };
}
