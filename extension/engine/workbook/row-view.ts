import type { RowView } from '../formula/catalogue.ts';
import type { AnsweredRow, Answers } from './answers.ts';

/** Whether two rows are the same row of the file, calculated at different times or not. */
export function isSameRow(one: AnsweredRow, other: AnsweredRow | undefined): boolean {
  return one.table === other?.table && one.id === other.id && one.occurrence === other.occurrence;
}

/** A row by itself, as functions of rows see it: nothing stands on it. */
export function loneView(row: AnsweredRow): RowView {
  return seen(row, []);
}

function seen(row: AnsweredRow, standing: readonly RowView[]): RowView {
  return {
    id: row.id,
    kind: row.kind,
    value: (column) => {
      const { result } = row.cell(column);
      return result.state === 'value' ? result.value : undefined;
    },
    standing,
  };
}

/** A row with what stands on it, as functions of rows see them. */
export function rowViewOf(row: AnsweredRow, answers: Answers): RowView {
  const standing = answers
    .rows('part')
    .filter((one) => answers.under(one).some((ground) => isSameRow(ground, row)));
  return seen(row, standing.map(loneView));
}
