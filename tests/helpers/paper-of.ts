import type {
  PaperContent,
  PaperGround,
  PaperSource,
} from '../../extension/engine/export/paper/paper.ts';
import { papers } from '../../extension/engine/export/paper/papers.ts';

/** A paper of a job by its word; a word that is none is a fault of the test. */
export function paperOf(id: string, ground: PaperGround, source: PaperSource = {}): PaperContent {
  const paper = papers.find((one) => one.id === id);
  if (paper === undefined) throw new Error(`There is no paper ${id}`);
  return paper.content(ground, source);
}

/** What a person reads on a page, without tags and style. */
export function wordsOf(page: string): string {
  return page
    .replace(/<style[\s\S]*?<\/style>/, '')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll('&amp;', '&')
    .replaceAll(/\s+/g, ' ');
}
