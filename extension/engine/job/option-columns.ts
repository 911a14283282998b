import { columnTable, text } from './column-table.ts';

/** Named alternatives of some cells; what they set are dotted keys. */
export const optionColumns = columnTable('option', [
  [
    text('name', 'name', 'What the client would choose: cloth, a better driver.'),
    text('note', 'note', 'Anything the next person should know.'),
  ],
]);
