import { leastColumnWidth, pageRows } from './geometry.ts';
import type { Grid } from './grid.ts';
import { gridCommand, type GridCommand } from './keys.ts';
import { jumpSpot } from './range.ts';
import {
  clampSpot,
  extendTo,
  isSingle,
  nextInRange,
  selectAll,
  selectColumns,
  selectRows,
  selectSpot,
  type Spot,
} from './selection.ts';

/** Gestures that change the job or leave the grid; named for keys, menus and VS Code's commands. */
export type ActionName =
  | 'clear'
  | 'fill-down'
  | 'insert-row'
  | 'duplicate-row'
  | 'delete-row'
  | 'move-row-up'
  | 'move-row-down'
  | 'to-card'
  | 'find';

/** Carries out a key in the grid; false leaves the key to the browser and VS Code. */
export function runKey(grid: Grid, event: KeyboardEvent, act: (name: ActionName) => void): boolean {
  const command = gridCommand(event);
  if (command === undefined) return false;
  return runMove(grid, command) || runEdit(grid, command) || runAction(command, act);
}

function go(grid: Grid, spot: Spot, extend: boolean): boolean {
  const { selection } = grid;
  if (selection === undefined) return true;
  const to = clampSpot(spot, grid.view.bounds);
  grid.select(extend ? extendTo(selection, to) : selectSpot(to), { reveal: to });
  return true;
}

function runMove(grid: Grid, command: GridCommand): boolean {
  const { selection, view } = grid;
  if (selection === undefined) return false;
  if (command.do === 'select') return runSelect(grid, command.what);
  if (!('extend' in command)) return false;
  const from = command.extend ? selection.to : selection.active;
  switch (command.do) {
    case 'move':
      if (!command.extend && grid.groups.stopBeside(from.row, command.rows)) return true;
      return go(
        grid,
        { row: from.row + command.rows, column: from.column + command.columns },
        command.extend,
      );
    case 'jump':
      return go(grid, jumpSpot(view, from, command), command.extend);
    case 'page': {
      const row = from.row + command.by * pageRows(view.viewport.height);
      return go(grid, { row, column: from.column }, command.extend);
    }
    case 'go':
      return go(grid, goSpot(command.to, from, view.bounds), command.extend);
  }
}

function goSpot(
  to: 'row-start' | 'row-end' | 'start' | 'end',
  from: Spot,
  bounds: { readonly rows: number; readonly columns: number },
): Spot {
  const row = to === 'start' ? 0 : to === 'end' ? bounds.rows - 1 : from.row;
  const column = to === 'row-start' || to === 'start' ? 0 : bounds.columns - 1;
  return { row, column };
}

function runSelect(grid: Grid, what: 'row' | 'column' | 'all'): boolean {
  const { selection } = grid;
  if (selection === undefined) return true;
  const { bounds } = grid.view;
  const how = what === 'row' ? selectRows : what === 'column' ? selectColumns : selectAll;
  grid.select(how(selection, bounds), { reveal: selection.active });
  return true;
}

function runEdit(grid: Grid, command: GridCommand): boolean {
  switch (command.do) {
    case 'step':
      return runStep(grid, command.along, command.by);
    case 'enter':
      // Enter walks past results: there is nothing to edit in them.
      if (grid.target() === undefined) return runStep(grid, 'columns', 1);
      grid.editor.begin('caret');
      return true;
    case 'edit':
    case 'pick':
      grid.editor.begin('caret');
      return true;
    case 'clear-and-edit':
      grid.editor.begin('caret', '');
      return true;
    case 'escape':
      return runEscape(grid);
    case 'resize':
      return runResize(grid, command.by);
    case 'collapse-group':
      grid.groups.collapseActive();
      return true;
    default:
      return false;
  }
}

function runEscape(grid: Grid): boolean {
  grid.hint.hide();
  const { selection } = grid;
  if (selection !== undefined && !isSingle(selection)) grid.select(selectSpot(selection.active));
  return true;
}

function runResize(grid: Grid, by: number): boolean {
  const column = grid.selection?.active.column ?? 0;
  const width = (grid.view.widths[column] ?? 0) + by;
  if (width >= leastColumnWidth) grid.resizeColumn(column, width, true);
  return true;
}

// Tab past either end of the sheet leaves the grid: the keyboard is never caught in it.
function runStep(grid: Grid, along: 'rows' | 'columns', by: 1 | -1): boolean {
  const { selection, view } = grid;
  if (selection === undefined) return false;
  if (!isSingle(selection)) {
    grid.select(nextInRange(selection, along, by));
    return true;
  }
  const { row, column } = selection.active;
  const { rows, columns } = view.bounds;
  if (along === 'columns') return go(grid, { row: row + by, column }, false);
  const place = row * columns + column + by;
  if (place < 0 || place >= rows * columns) return false;
  return go(grid, { row: Math.floor(place / columns), column: place % columns }, false);
}

const actions: Partial<Readonly<Record<GridCommand['do'], ActionName>>> = {
  clear: 'clear',
  'fill-down': 'fill-down',
  'insert-row': 'insert-row',
  'duplicate-row': 'duplicate-row',
  'delete-row': 'delete-row',
  'to-card': 'to-card',
  find: 'find',
};

function runAction(command: GridCommand, act: (name: ActionName) => void): boolean {
  const name =
    command.do === 'move-row'
      ? command.by > 0
        ? 'move-row-down'
        : 'move-row-up'
      : actions[command.do];
  if (name === undefined) return false;
  act(name);
  return true;
}
