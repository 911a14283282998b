import { length } from '../units/dimension.ts';
import type { AnsweredRow, Answers } from './answers.ts';
import { baseIn, wordIn } from './row-cells.ts';

/** Length in a column of the driver that a part carries, or of what it stands on does. */
function driverLength(row: AnsweredRow, column: string, answers: Answers): number | undefined {
  for (const one of [row, ...answers.under(row)]) {
    const driver = answers.row('driver', wordIn(one, 'driver'));
    if (driver !== undefined) return baseIn(driver, column, length);
  }
  return undefined;
}

/** Diameter of the round opening in the middle of a part, mm: each kind says which. */
export function partOpening(row: AnsweredRow, answers: Answers): number | undefined {
  switch (row.kind) {
    case 'baffle':
      return driverLength(row, 'cutout', answers);
    case 'grille':
      return driverLength(row, 'frame', answers);
    case 'bezel':
      return baseIn(row, 'size', length);
    default:
      return undefined;
  }
}
