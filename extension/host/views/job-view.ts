import { fileForm, type LocatedProblem, type Money, type Snapshot } from '../../engine/index.ts';
import type { JobView, KnobView, RowView } from '../../protocol/views.ts';
import { billView } from './bill-view.ts';
import { checkViews } from './check-view.ts';
import { headlineView } from './headline-view.ts';
import { problemViews } from './problem-view.ts';
import type { SheetContext } from './sheet-context.ts';
import { jobRows, rowView, sheetRows, sheetView, shownTables } from './sheet-view.ts';

/** Why a job takes no edit, or undefined when it does. */
export interface Lock {
  readonly state: 'read-only' | 'conflicted' | 'unreadable';
  readonly message: string;
  readonly line: number;
}

/** Lock that the text itself asks for: conflict markers, a newer format, nothing that can be read. */
export function lockOf(snapshot: Snapshot): Lock | undefined {
  const firstError = (): LocatedProblem | undefined =>
    snapshot.problems.find((one) => one.problem.severity === 'error');
  switch (snapshot.reading.state) {
    case 'readable':
      return undefined;
    case 'newer':
      return {
        state: 'read-only',
        message:
          'This job was written by a newer version of Panelwright. It is shown read-only so that nothing in it is lost; update the extension to edit it.',
        line: 0,
      };
    case 'conflicted':
      return {
        state: 'conflicted',
        message:
          'This file holds git conflict markers (<<<<<<<, =======, >>>>>>>). Settle each conflict below, or open it as text and keep the lines you want; then the grid comes back.',
        line: firstError()?.line ?? 1,
      };
    case 'unreadable':
      return {
        state: 'unreadable',
        message: firstError()?.problem.message ?? 'This text cannot be read as a job.',
        line: firstError()?.line ?? 1,
      };
  }
}

export interface JobViewParts {
  readonly context: SheetContext;
  readonly baseline: Money;
  readonly knobs: readonly KnobView[];
  /** A lock from outside the text, such as a read-only folder. */
  readonly lock: Lock | undefined;
}

function isEmpty(snapshot: Snapshot): boolean {
  return ['panel', 'part', 'driver', 'measure', 'task'].every(
    (table) => (snapshot.shown.tables.get(table) ?? []).length === 0,
  );
}

/** The whole job but its rows. */
export function jobView({ context, baseline, knobs, lock }: JobViewParts): JobView {
  const { snapshot } = context;
  const locked = lock ?? lockOf(snapshot);
  const form = fileForm(snapshot.shown);
  return {
    form,
    state: locked?.state ?? (form === 'job' && isEmpty(snapshot) ? 'empty' : 'ready'),
    message: locked?.message ?? '',
    line: locked?.line ?? 0,
    units: snapshot.settings.units,
    sheets: shownTables(snapshot).map((table) => sheetView(table, context)),
    headline: headlineView(snapshot, baseline),
    knobs,
    bill: billView(snapshot, baseline, undefined),
    checks: checkViews(snapshot),
    problems: problemViews(snapshot),
    kits:
      form === 'job' ? snapshot.book.kits.map(({ id, name, help }) => ({ id, name, help })) : [],
  };
}

/** All rows of a table in display order. */
export function tableRows(table: string, context: SheetContext): readonly RowView[] {
  if (table === 'job') return jobRows(context);
  return sheetRows(table, context.snapshot).map((row) => rowView(row, context));
}
