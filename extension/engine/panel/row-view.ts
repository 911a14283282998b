import type { RowView } from '../formula/catalogue.ts';
import type { AnsweredRow, Answers } from '../workbook/answers.ts';

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

function isSame(one: AnsweredRow, other: AnsweredRow): boolean {
  return one.table === other.table && one.id === other.id && one.occurrence === other.occurrence;
}

/** A row with what stands on it, as functions of rows see it. */
export function rowViewOf(row: AnsweredRow, answers: Answers): RowView {
  const standing = answers
    .rows('part')
    .filter((one) => answers.under(one).some((ground) => isSame(ground, row)));
  return seen(
    row,
    standing.map((one) => seen(one, [])),
  );
}
