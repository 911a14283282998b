import { jobCautions } from '../../estimate/job-cautions.ts';
import type { PaperGround } from './paper.ts';

/** What stands over cautions on paper. */
export const papersFirst =
  'Labels, safety data sheets and local rules come before anything printed here. Limits are quoted with their source, not advised.';

/** What to mind at the bench: the cautions of the kinds in a job, each once, in the order of its parts. */
export function benchCautions({ workbook, book }: PaperGround): readonly string[] {
  const texts = workbook.rows('part').flatMap((row) => book.kinds.get(row.kind)?.cautions ?? []);
  return [...new Set(texts)];
}

/** The dangers of a job by their names, the gravest first. */
export function dangersNamed(ground: PaperGround): readonly string[] {
  return jobCautions(ground).map(({ hazard }) => hazard.title);
}
