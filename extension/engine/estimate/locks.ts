import type { Problem } from '../problems.ts';
import { angle, length, plain } from '../units/dimension.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { AnsweredRow } from '../workbook/answers.ts';
import { lengthText, sizeText } from './amount.ts';
import { billProblem } from './bill-problems.ts';
import { baseIn, placeOf, wordIn } from './cells.ts';
import type { Lock, LockFault, Unheld } from './cut-layout.ts';

const degree = Math.PI / 180;

/** Reads a lock; undefined where it does not say where the part lies. */
export function readLock(row: AnsweredRow): Lock | undefined {
  const sheet = baseIn(row, 'sheet', plain) ?? 1;
  const x = baseIn(row, 'at_x', length);
  const y = baseIn(row, 'at_y', length);
  const [part, stock] = [wordIn(row, 'part'), wordIn(row, 'stock')];
  if (row.broken || x === undefined || y === undefined || part === '' || stock === '') {
    return undefined;
  }
  const turn = (baseIn(row, 'turn', angle) ?? 0) / degree;
  const { result } = row.cell('mirrored');
  return {
    row,
    part,
    stock,
    index: Math.max(0, Math.round(sheet) - 1),
    x,
    y,
    rotation: Math.round(turn * 1e6) / 1e6,
    mirrored: result.state === 'value' && result.value.kind === 'yes-no' && result.value.yes,
  };
}

const words: Readonly<Record<LockFault, (lock: Unheld) => string>> = {
  part: () => 'the job cuts no more pieces of it from this stock',
  stock: () => 'there is no such sheet any more',
  turn: ({ fixed }) => `the material does not let it be turned by ${String(fixed?.rotation ?? 0)}°`,
  edge: () => 'it would go over the edge',
  other: ({ other = '' }) => `it would come nearer than the cut to what ${other} holds`,
  sheet: () => 'other locks hold parts on a sheet of another stock by that number',
  saw: () => 'straight cuts from edge to edge would not free it there',
  unread: () => 'it does not say which part lies where',
  repeat: () => 'it would not begin at a whole repeat of the pattern',
  'no-sheets': () => 'only parts cut from sheets, and rectangles cut off a roll, are held in place',
};

/** The sentence about a lock that does not hold. */
export function lockProblem(unheld: Unheld, settings: UnitSettings): Problem {
  const { row, size, sheet, fixed, why } = unheld;
  const at =
    fixed === undefined
      ? ''
      : ` at ${lengthText(fixed.x, settings)}, ${lengthText(fixed.y, settings)}${unheld.roll === true ? '' : ` of sheet ${String(fixed.index + 1)}`}`;
  const of = sheet === undefined ? '' : ` (${sizeText(sheet, settings)})`;
  const part = size === undefined ? '' : ` (${sizeText(size, settings)})`;
  const details = {
    row: row.id,
    part: `${wordIn(row, 'part') || 'nothing'}${part}`,
    place: `${at} of ${wordIn(row, 'stock') || 'no stock'}${of}`,
    why: words[why](unheld),
  };
  return billProblem('lock-unheld', details, { severity: 'warning', place: placeOf(row) });
}
