import { columnTable, list, text } from './column-table.ts';

/** Questions of a template. */
export const askColumns = columnTable('ask', [
  [
    text('name', 'question', 'What is asked.'),
    text('help', 'help', 'One line about it.'),
    list('sets', 'sets', 'Cells its answer is written into: row.column, or job.setting.'),
  ],
  [
    list('keeps', 'keeps', 'Rows that stay where the answer is yes, and go where it is no.'),
    list('choices', 'choices', 'What may be answered; blank: whatever fits the cell.'),
  ],
  [
    text('start', 'offered', 'Answer that is offered; blank: what stands in the cell.'),
    text('start_mm', 'offered in mm', 'Answer that is offered where the job works in mm.'),
  ],
  [
    text('least', 'at least', 'Smallest answer that is taken.'),
    text('most', 'at most', 'Largest answer that is taken.'),
  ],
]);
