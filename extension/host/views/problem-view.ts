import type { LocatedProblem, Snapshot } from '../../engine/index.ts';
import type { CellAddress } from '../../protocol/messages.ts';
import type { ProblemView } from '../../protocol/views.ts';
import { settingCell } from '../addresses.ts';

/** Where the grid shows a problem: a setting has a row of its own in the sheet of settings. */
export function problemAddress({ place }: LocatedProblem): CellAddress | undefined {
  if (place === undefined) return undefined;
  const { table, row, column = '', occurrence = 0 } = place;
  if (table === 'job') return column === '' ? undefined : settingCell(column);
  return row === undefined ? undefined : { table, id: row, occurrence, column };
}

export function problemView(located: LocatedProblem): ProblemView {
  const { problem, place } = located;
  const address = problemAddress(located);
  return {
    code: problem.code,
    message: problem.message,
    severity: problem.severity,
    table: place?.table ?? '',
    row: address?.id ?? '',
    occurrence: address?.occurrence ?? 0,
    column: address?.column ?? '',
    line: located.line,
    fixes: (problem.fixes ?? []).map((fix) => fix.title),
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
  return [...snapshot.problems]
    .sort((one, two) => weight(one) - weight(two) || one.line - two.line)
    .map(problemView);
}
