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

/** Problems worth a line: the worst first, in file order otherwise; cells that only wait are left to the grid. */
export function problemViews(snapshot: Snapshot): readonly ProblemView[] {
  const rank = { error: 0, warning: 1, note: 2 } as const;
  return snapshot.problems
    .map(problemView)
    .sort((one, two) => rank[one.severity] - rank[two.severity] || one.line - two.line);
}
