import type { Book } from '../book/book.ts';
import { hazards, type Hazard } from '../book/cautions.ts';
import type { Answers, AnsweredRow } from '../workbook/answers.ts';

/** A danger of a job, with the rows that bring it in display order. */
export interface JobCaution {
  readonly hazard: Hazard;
  readonly rows: readonly AnsweredRow[];
}

/**
 * Cautions of a job: each danger that the kind of one of its parts names, the gravest first. A
 * job without such parts has none.
 */
export function jobCautions({
  workbook,
  book,
}: {
  readonly workbook: Answers;
  readonly book: Book;
}): readonly JobCaution[] {
  const found = new Map<string, AnsweredRow[]>();
  for (const row of workbook.rows('part')) {
    for (const id of book.kinds.get(row.kind)?.hazards ?? []) {
      const rows = found.get(id);
      if (rows === undefined) found.set(id, [row]);
      else rows.push(row);
    }
  }
  return hazards.flatMap((hazard) => {
    const rows = found.get(hazard.id);
    return rows === undefined ? [] : [{ hazard, rows }];
  });
}
