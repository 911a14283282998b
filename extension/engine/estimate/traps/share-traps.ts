import type { Problem } from '../../problems.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { nameOf, placeOf } from '../cells.ts';
import { percentText } from '../../units/percent-text.ts';
import { shareIn } from './trap-cells.ts';
import { trapProblem } from './trap-problems.ts';
import type { Trap } from './trap.ts';

const bareNumber = /^\d+(?:\.\d+)?$/;

function bareShares(row: AnsweredRow): readonly Problem[] {
  const drawn = row.draws.flatMap((draw) => [`draw.${draw}.percent`, `draw.${draw}.waste`]);
  return ['percent', 'waste', 'solids', ...drawn].flatMap((column) => {
    const { text = '', origin } = row.cell(column);
    if (origin !== 'typed' || !bareNumber.test(text)) return [];
    const share = shareIn(row, column);
    if (share === undefined || share < 1) return [];
    const place = placeOf(row, column);
    const [meant, whole] = [`${text} %`, percentText(share)];
    const fixes = [{ title: `Make it ${meant}`, place, text: meant }];
    const details = { row: nameOf(row), column, text, meant, whole };
    return [trapProblem('share-bare', details, { severity: 'warning', place, fixes })];
  });
}

/** A percentage written without its sign in the file: 15 for 15 % is fifteen times the whole. */
export const shareTraps: readonly Trap[] = [
  { tables: ['part', 'charge', 'material'], find: bareShares },
];
