import type { Problem } from '../problems.ts';
import type { AnsweredRow, Answers } from '../workbook/answers.ts';
import { billProblem } from './bill-problems.ts';
import { baseIn, nameOf, placeOf, wordIn } from './cells.ts';
import { isSameCell } from './cells-read.ts';
import { plain } from '../units/dimension.ts';

/** How many of a panel a job makes, and of which hands. */
export interface PanelCount {
  /** Left-handed and right-handed panels; alike panels count in `alike`. */
  readonly left: number;
  readonly right: number;
  readonly alike: number;
}

/** The panels one panel row stands for: a pair is a left and a right one, all × its count. */
export function panelCount(panel: AnsweredRow): PanelCount {
  const count = baseIn(panel, 'count', plain) ?? 1;
  const hands = wordIn(panel, 'hands');
  if (hands === 'pair') return { left: count, right: count, alike: 0 };
  if (hands === 'left') return { left: count, right: 0, alike: 0 };
  if (hands === 'right') return { left: 0, right: count, alike: 0 };
  return { left: 0, right: 0, alike: count };
}

/** All panels of a panel row. */
export function allPanels(panel: AnsweredRow): number {
  const { left, right, alike } = panelCount(panel);
  return left + right + alike;
}

/** How many times a row is made: once for each panel, hand or job. */
export interface Multiplicity {
  readonly panels: number;
  /** `2 panels`, `1 left panel`, `once for the job`: for the working behind a figure. */
  readonly words: string;
  readonly problem?: Problem;
}

const onceForTheJob: Multiplicity = { panels: 1, words: 'once for the job' };

/**
 * How many panels a part is made for. A row without a panel belongs to the job and is made once, as
 * is a row with `per = "job"`; `hand` left or right keeps it to the panels of that hand.
 */
export function multiplicity(
  row: AnsweredRow,
  panel: AnsweredRow | undefined,
  per: string,
): Multiplicity {
  if (per === 'job' || panel === undefined) return onceForTheJob;
  const counted = panelCount(panel);
  const all = counted.left + counted.right + counted.alike;
  const hand = wordIn(row, 'hand');
  if ((hand !== 'left' && hand !== 'right') || counted.alike > 0) {
    return { panels: all, words: `${String(all)} ${all === 1 ? 'panel' : 'panels'}` };
  }
  const panels = counted[hand];
  const words = `${String(panels)} ${hand} ${panels === 1 ? 'panel' : 'panels'}`;
  if (panels > 0) return { panels, words };
  const problem = billProblem(
    'hand-unmatched',
    {
      row: nameOf(row),
      hand,
      panel: nameOf(panel),
      other: hand === 'left' ? 'right-handed' : 'left-handed',
    },
    { severity: 'warning', place: placeOf(row, 'hand') },
  );
  return { panels, words, problem };
}

/** The panel of a row, and the rows on the way to it, as `table/id`, whether they were there or not. */
export interface PanelWay {
  readonly panel: AnsweredRow | undefined;
  readonly walked: readonly string[];
}

/** The same, taken over where the row says the same of it as before and no row on it moved. */
export function panelAsBefore(
  row: AnsweredRow,
  before: PanelWay & { readonly row: AnsweredRow },
  around: { readonly answers: Answers; readonly moved: (key: string) => boolean },
): PanelWay {
  const says = (column: string): boolean => isSameCell(before.row.cell(column), row.cell(column));
  const stands = says('panel') && says('on') && !before.walked.some(around.moved);
  const { panel, walked } = before;
  return stands ? { panel, walked } : panelOf(row, around.answers);
}

interface KnownWay {
  readonly way: PanelWay;
  /** The rows that were met at each step of the way. */
  readonly met: readonly (AnsweredRow | undefined)[];
}

/** Finds rows by table and id, in lists that are read once. */
function finder(answers: Answers): (table: string, id: string) => AnsweredRow | undefined {
  const tables = new Map<string, ReadonlyMap<string, AnsweredRow>>();
  return (table, id) => {
    let rows = tables.get(table);
    if (rows === undefined) {
      // Of two rows with one id the first is meant.
      const first = [...answers.rows(table)].reverse().map((row) => [row.id, row] as const);
      tables.set(table, (rows = new Map(first)));
    }
    return rows.get(id);
  };
}

/**
 * Tells the panels of rows, named by table and id. The way to a panel is remembered for as long as no
 * row on it changes: a row whose answers did not change stays the same object.
 */
export function openPanelFinder(): (
  answers: Answers,
) => (table: string, id: string) => AnsweredRow | undefined {
  const known = new WeakMap<AnsweredRow, KnownWay>();
  return (answers) => {
    const find = finder(answers);
    const meet = (step: string): AnsweredRow | undefined => {
      const slash = step.indexOf('/');
      return find(step.slice(0, slash), step.slice(slash + 1));
    };
    return (table, id) => {
      const row = find(table, id);
      if (row === undefined) return undefined;
      const old = known.get(row);
      if (old?.way.walked.every((step, index) => meet(step) === old.met[index]) === true)
        return old.way.panel;
      const way = panelOf(row, answers);
      known.set(row, { way, met: way.walked.map(meet) });
      return way.panel;
    };
  };
}

/**
 * A row belongs to the panel it names, else to that of the nearest row it stands on that names one;
 * a task may stand on the panel itself.
 */
export function panelOf(row: AnsweredRow, answers: Answers): PanelWay {
  const walked: string[] = [];
  for (const link of [row, ...answers.under(row)]) {
    if (link.table === 'panel') return { panel: link, walked: walked.slice() };
    const panel = wordIn(link, 'panel');
    if (panel !== '') {
      walked.push(`panel/${panel}`);
      return { panel: answers.row('panel', panel), walked: walked.slice() };
    }
    const on = wordIn(link, 'on');
    if (on !== '') walked.push(`part/${on}`, ...(link.table === 'part' ? [] : [`panel/${on}`]));
  }
  return { panel: undefined, walked: walked.slice() };
}
