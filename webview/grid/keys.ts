/** What a key means while no cell is being edited. */
export type GridCommand =
  | {
      readonly do: 'move';
      readonly rows: number;
      readonly columns: number;
      readonly extend: boolean;
    }
  | { readonly do: 'page'; readonly by: 1 | -1; readonly extend: boolean }
  | {
      readonly do: 'go';
      readonly to: 'row-start' | 'row-end' | 'start' | 'end';
      readonly extend: boolean;
    }
  | {
      readonly do: 'jump';
      readonly rows: number;
      readonly columns: number;
      readonly extend: boolean;
    }
  | { readonly do: 'step'; readonly along: 'rows' | 'columns'; readonly by: 1 | -1 }
  | { readonly do: 'select'; readonly what: 'row' | 'column' | 'all' }
  | { readonly do: 'resize'; readonly by: number }
  | { readonly do: 'move-row'; readonly by: 1 | -1 }
  | {
      readonly do:
        | 'edit'
        | 'enter'
        | 'pick'
        | 'clear'
        | 'clear-and-edit'
        | 'insert-row'
        | 'duplicate-row'
        | 'delete-row'
        | 'fill-down'
        | 'escape'
        | 'collapse-group'
        | 'find'
        | 'to-card';
    };

/** The parts of a keyboard event that matter here. */
export interface Key {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

const resizeStep = 12;

const arrows: Readonly<Record<string, readonly [rows: number, columns: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

function arrowCommand(event: Key, ctrl: boolean): GridCommand | undefined {
  const [rows = 0, columns = 0] = arrows[event.key] ?? [];
  if (event.altKey) return altArrow(event, ctrl, rows, columns);
  return { do: ctrl ? 'jump' : 'move', rows, columns, extend: event.shiftKey };
}

function altArrow(
  event: Key,
  ctrl: boolean,
  rows: number,
  columns: number,
): GridCommand | undefined {
  if (ctrl) return undefined;
  if (event.shiftKey) {
    if (columns !== 0) return { do: 'resize', by: columns * resizeStep };
    return rows > 0 ? { do: 'duplicate-row' } : undefined;
  }
  if (rows !== 0) return { do: 'move-row', by: rows > 0 ? 1 : -1 };
  return undefined;
}

const ctrlKeys: Readonly<Record<string, GridCommand>> = {
  home: { do: 'go', to: 'start', extend: false },
  end: { do: 'go', to: 'end', extend: false },
  enter: { do: 'insert-row' },
  ' ': { do: 'select', what: 'column' },
  a: { do: 'select', what: 'all' },
  d: { do: 'fill-down' },
  f: { do: 'find' },
};

// On many keyboards the bracket with Shift is a brace.
const ctrlShiftKeys: Readonly<Record<string, GridCommand>> = {
  home: { do: 'go', to: 'start', extend: true },
  end: { do: 'go', to: 'end', extend: true },
  ' ': { do: 'select', what: 'column' },
  k: { do: 'delete-row' },
  '[': { do: 'collapse-group' },
  '{': { do: 'collapse-group' },
};

function ctrlCommand(event: Key): GridCommand | undefined {
  return (event.shiftKey ? ctrlShiftKeys : ctrlKeys)[event.key.toLowerCase()];
}

const plainKeys: Readonly<Record<string, GridCommand>> = {
  Enter: { do: 'enter' },
  Tab: { do: 'step', along: 'rows', by: 1 },
  F2: { do: 'edit' },
  F4: { do: 'pick' },
  F6: { do: 'to-card' },
  Delete: { do: 'clear' },
  Backspace: { do: 'clear-and-edit' },
  Home: { do: 'go', to: 'row-start', extend: false },
  End: { do: 'go', to: 'row-end', extend: false },
  PageDown: { do: 'page', by: 1, extend: false },
  PageUp: { do: 'page', by: -1, extend: false },
  Escape: { do: 'escape' },
};

const shiftKeys: Readonly<Record<string, GridCommand>> = {
  Enter: { do: 'step', along: 'columns', by: -1 },
  Tab: { do: 'step', along: 'rows', by: -1 },
  Home: { do: 'go', to: 'row-start', extend: true },
  End: { do: 'go', to: 'row-end', extend: true },
  PageDown: { do: 'page', by: 1, extend: true },
  PageUp: { do: 'page', by: -1, extend: true },
  ' ': { do: 'select', what: 'row' },
};

/**
 * Names what a key does in the grid; `undefined` leaves it to the browser and VS Code: letters are
 * typed, Ctrl+Z, Ctrl+S, Ctrl+P and the like go their own way.
 */
export function gridCommand(event: Key): GridCommand | undefined {
  const ctrl = event.ctrlKey || event.metaKey;
  if (event.key in arrows) return pickKey(event, ctrl) ?? arrowCommand(event, ctrl);
  if (event.altKey) return undefined;
  return ctrl ? ctrlCommand(event) : (event.shiftKey ? shiftKeys : plainKeys)[event.key];
}

function pickKey(event: Key, ctrl: boolean): GridCommand | undefined {
  return ctrl && event.altKey && event.key === 'ArrowDown' ? { do: 'pick' } : undefined;
}
