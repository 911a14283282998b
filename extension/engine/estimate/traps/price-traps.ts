import type { Problem } from '../../problems.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { nameOf, placeOf } from '../cells.ts';
import { percentText } from '../../units/percent-text.ts';
import { shareIn } from './trap-cells.ts';
import { trapProblem } from './trap-problems.ts';
import type { Trap } from './trap.ts';

// Materials are marked up by a quarter to a half; above this somebody most often meant the margin.
const usualMost = 0.6;

function told(
  row: AnsweredRow,
  code: 'markup-or-margin' | 'margin-or-markup' | 'margin-whole',
  details: Readonly<Record<string, string>>,
): readonly Problem[] {
  const severity = code === 'margin-whole' ? 'error' : 'warning';
  const place = placeOf(row, 'percent');
  return [trapProblem(code, { row: nameOf(row), ...details }, { severity, place })];
}

function ofMarkup(row: AnsweredRow, share: number): readonly Problem[] {
  const named = /margin/i.test(nameOf(row));
  if (!named && share <= usualMost) return [];
  return told(row, 'markup-or-margin', {
    markup: percentText(share),
    margin: percentText(share / (1 + share)),
    other: share < 1 ? percentText(share / (1 - share)) : 'beyond all bounds',
  });
}

function ofMargin(row: AnsweredRow, share: number): readonly Problem[] {
  const margin = percentText(share);
  if (share >= 1) return told(row, 'margin-whole', { margin });
  const named = /mark-?\s?up/i.test(nameOf(row));
  if (!named && share <= usualMost) return [];
  return told(row, 'margin-or-markup', {
    margin,
    markup: percentText(share / (1 - share)),
    other: percentText(share / (1 + share)),
  });
}

function markupOrMargin(row: AnsweredRow): readonly Problem[] {
  const share = shareIn(row, 'percent');
  if (share === undefined || share <= 0) return [];
  if (row.kind === 'markup') return ofMarkup(row, share);
  return row.kind === 'margin' ? ofMargin(row, share) : [];
}

/** Markup is a share of cost, margin a share of price. */
export const priceTraps: readonly Trap[] = [{ tables: ['charge'], find: markupOrMargin }];
