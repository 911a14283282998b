import type { LocatedProblem, Snapshot } from '../../engine/index.ts';
import type { ProblemView } from '../../protocol/views.ts';

export function problemView(located: LocatedProblem): ProblemView {
  const { problem, place } = located;
  return {
    code: problem.code,
    message: problem.message,
    severity: problem.severity,
    table: place?.table ?? '',
    row: place?.row ?? '',
    occurrence: place?.occurrence ?? 0,
    column: place?.column ?? '',
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
