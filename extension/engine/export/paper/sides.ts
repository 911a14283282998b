import { nameOf, wordIn } from '../../estimate/cells.ts';
import { panelCount, panelOf } from '../../estimate/panels.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { tickBox, type ColumnLook, type Content } from './html.ts';
import type { PaperGround } from './paper.ts';

/** How many pieces of a row are made for each side of the car; `either` where no side is meant. */
export interface Sides {
  readonly left: number;
  readonly right: number;
  readonly either: number;
}

/** Pieces of a row by side: those for one hand only, for both hands of a pair, or for no hand. */
export function sidesOf(row: AnsweredRow, pieces: number, { workbook }: PaperGround): Sides {
  const { panel } = panelOf(row, workbook);
  const none = { left: 0, right: 0, either: 0 };
  if (panel === undefined || wordIn(row, 'per') === 'job') return { ...none, either: pieces };
  const { left, right, alike } = panelCount(panel);
  if (alike > 0) return { ...none, either: alike * pieces };
  const hand = wordIn(row, 'hand');
  return {
    left: hand === 'right' ? 0 : left * pieces,
    right: hand === 'left' ? 0 : right * pieces,
    either: 0,
  };
}

/** The panel a row is for, where the job has several: rows of one name are told apart by it. */
export function panelNameOf(row: AnsweredRow, { workbook }: PaperGround): string {
  if (workbook.rows('panel').length < 2) return '';
  const { panel } = panelOf(row, workbook);
  const name = panel === undefined ? '' : nameOf(panel);
  return nameOf(row).includes(name) ? '' : name;
}

const headings = { left: 'Left', right: 'Right', either: 'No side' } as const;
const order = ['left', 'right', 'either'] as const;

/** Columns of a table that tell sides apart, a box to tick for each; `of` are all rows of the table. */
export interface SideColumns {
  readonly head: readonly string[];
  readonly looks: readonly ColumnLook[];
  readonly cells: (sides: Sides) => readonly Content[];
}

function countText(count: number): string {
  return String(Math.round(count * 1000) / 1000);
}

export function sideColumns(of: readonly Sides[]): SideColumns {
  const used = order.filter((side) => of.some((sides) => sides[side] > 0));
  const alone = used.length === 1 && used[0] === 'either';
  return {
    head: used.map((side) => (alone ? 'How many' : headings[side])),
    looks: used.map(() => 'w'),
    cells: (sides) =>
      used.map((side) => (sides[side] > 0 ? [tickBox, ` \u00a0${countText(sides[side])}`] : '—')),
  };
}
