import { actualRows, type ActualRow } from '../../engine/index.ts';
import type { ActualRowView, ActualsView } from '../../protocol/actuals-view.ts';
import { cellView } from './cell-view.ts';
import type { SheetContext } from './sheet-context.ts';
import { toldOf } from './sheet-view.ts';

function differenceOf({ difference, off }: Pick<ActualRow, 'difference' | 'off'>): string {
  return [difference, difference === 'as planned' ? '' : off]
    .filter((text) => text !== '')
    .join(', ');
}

function rowView(one: ActualRow, context: SheetContext): ActualRowView {
  const { row, column, name, of, estimated, actual, problem } = one;
  const { table, id, occurrence } = row;
  const { settings } = context.snapshot;
  const said = cellView(row.cell(column), settings, toldOf(column, row, context));
  return {
    cell: { table, id, occurrence, column },
    ...{ name, of, estimated, said },
    actual: actual === said.shown ? '' : actual,
    difference: differenceOf(one),
    problem: said.message === '' ? problem : said.message,
  };
}

const none =
  'There is nothing to hold against an actual yet: no task has a time and no part takes a material.';

function saidText(rows: readonly ActualRow[], noun: string): string {
  const said = rows.filter(({ actual }) => actual !== '').length;
  return `${String(said)} of ${String(rows.length)} ${noun}`;
}

/** Estimate against actual, row by row, with the cells that actuals are typed into. */
export function actualsView(context: SheetContext): ActualsView {
  const { tasks, materials, timed } = actualRows(context.snapshot);
  const view = (one: ActualRow): ActualRowView => rowView(one, context);
  const nothing = tasks.length + materials.length === 0;
  return {
    message: nothing ? none : '',
    said: nothing
      ? ''
      : `Told so far: ${saidText(tasks, 'tasks')}, ${saidText(materials, 'parts')}.`,
    tasks: tasks.map(view),
    timed: timed && {
      label: timed.name,
      estimated: timed.estimated,
      actual: timed.actual,
      difference: differenceOf(timed),
    },
    materials: materials.map(view),
  };
}
