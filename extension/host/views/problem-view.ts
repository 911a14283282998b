import type { LocatedProblem, Snapshot } from '../../engine/index.ts';
import type { CellAddress } from '../../protocol/messages.ts';
import type { ProblemView } from '../../protocol/views.ts';
import { settingCell } from '../addresses.ts';
import { shownProblems, worded } from './problem-words.ts';

/** Where the grid shows a problem: a setting has a row of its own in the sheet of settings. */
export function problemAddress({ place }: LocatedProblem): CellAddress | undefined {
  if (place === undefined) return undefined;
  const { table, row, column = '', occurrence = 0 } = place;
  if (table === 'job' || table === 'book') return column === '' ? undefined : settingCell(column);
  return row === undefined ? undefined : { table, id: row, occurrence, column };
}

function isInJob({ table, id }: CellAddress, snapshot: Snapshot): boolean {
  return (snapshot.shown.tables.get(table) ?? []).some((row) => row.id === id);
}

const nowhere: CellAddress = { table: '', id: '', occurrence: 0, column: '' };

/** Where a problem is mended, with its line in the file where that is the problem's own row. */
function mendedAt(
  located: LocatedProblem,
  cell: CellAddress | undefined,
  snapshot: Snapshot,
): CellAddress & { readonly line: number } {
  const { place, line } = located;
  const own = problemAddress(located) ?? { ...nowhere, table: place?.table ?? '' };
  // A fix is asked for by its problem's own place; rows of the shop's book are on no sheet.
  const stays = cell === undefined || located.problem.fixes?.length || !isInJob(cell, snapshot);
  if (stays) return { ...own, line };
  const same = cell.id === own.id && cell.table === own.table;
  return { ...cell, line: same ? line : 0 };
}

/** A problem in bench words, at the cell that mends it where that is another one. */
export function problemView(located: LocatedProblem, snapshot: Snapshot): ProblemView {
  const { problem } = located;
  const { message, cell } = worded(located, snapshot);
  const { table, id, occurrence, column, line } = mendedAt(located, cell, snapshot);
  return {
    code: problem.code,
    message,
    severity: problem.severity,
    table,
    row: id,
    occurrence,
    column,
    line,
    fixes: (problem.fixes ?? []).map((fix) => fix.title),
    follows: isFollower(located),
  };
}

/** Problems that only follow from another: a need that waits for an answer elsewhere. */
const followers = new Set(['need-unanswered']);

/** True for a problem that goes when another one is mended. */
export function isFollower({ problem }: LocatedProblem): boolean {
  return followers.has(problem.code);
}

/** Problems with the worst first and causes before what follows from them, in file order otherwise. */
export function problemViews(snapshot: Snapshot): readonly ProblemView[] {
  const rank = { error: 0, warning: 1, note: 2 } as const;
  const weight = (one: LocatedProblem): number =>
    rank[one.problem.severity] + (isFollower(one) ? 0.5 : 0);
  const views = [...shownProblems(snapshot)]
    .sort((one, two) => weight(one) - weight(two) || one.line - two.line)
    .map((one) => problemView(one, snapshot));
  // One cell to fill in is told once, however many wait for it.
  const told = new Set<string>();
  return views.filter(({ message, table, row, occurrence, column }) => {
    const key = [message, table, row, occurrence, column].join('\n');
    return !told.has(key) && told.add(key);
  });
}
