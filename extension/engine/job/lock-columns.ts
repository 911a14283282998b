import { angle, length, plain } from '../units/dimension.ts';
import { columnTable, link, quantity, text, yesNo } from './column-table.ts';

/** Parts held where they lie on a sheet or a roll: later layouts leave them there. */
export const lockColumns = columnTable('lock', [
  [
    link('part', ['part'], 'part', 'Row whose piece is held.'),
    link('stock', ['pack', 'material'], 'stock', 'Pack of the sheet, or material on a roll.'),
    quantity('sheet', plain, 'sheet', 'Number of the sheet, from 1, as the Cut pane counts them.'),
  ],
  [
    quantity('at_x', length, 'along', 'Corner of the piece from the end of the sheet.'),
    quantity('at_y', length, 'across', 'Corner of the piece from the side of the sheet.'),
  ],
  [
    quantity('turn', angle, 'turned', 'How far it is turned on the sheet.'),
    yesNo('mirrored', 'mirrored', 'The piece for the other hand, cut as a mirror image.'),
    text('note', 'note', 'Anything the next person should know.'),
  ],
]);
