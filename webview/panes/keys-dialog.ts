import { openDialog } from '../dialogs.ts';
import { element } from '../dom.ts';

const keys: readonly (readonly [title: string, lines: readonly (readonly [string, string])[]])[] = [
  [
    'Move and select',
    [
      ['Arrows, Home, End, Page Up, Page Down', 'Move; with Shift select'],
      ['Ctrl+Arrow', 'To the edge of the filled cells'],
      ['Ctrl+Home, Ctrl+End', 'First and last cell'],
      ['Tab, Shift+Tab', 'Next and previous cell'],
      ['Shift+Space, Ctrl+Space, Ctrl+A', 'Select row, column, all'],
      ['F6', 'Between the grid and the row card'],
      ['Ctrl+F', 'Finds a text in the sheet; Enter and Shift+Enter go on and back'],
    ],
  ],
  [
    'Edit',
    [
      ['Typing', 'Replaces the cell; arrows and Enter finish'],
      ['Enter or F2', 'Edits what the cell holds'],
      ['Enter, Tab', 'Finish and go down, right'],
      ['Ctrl+Enter while editing', 'Writes the text into all selected cells'],
      ['Escape', 'Leaves the cell as it was'],
      ['F4', 'Opens the list of a choice or link'],
      ['Delete', 'Clears: a default comes back'],
      ['Ctrl+D', 'Fills down'],
      ['Ctrl+C, Ctrl+X, Ctrl+V', 'Copy, cut, paste, also with other spreadsheets'],
      ['Ctrl+Z, Ctrl+Y', 'Undo and redo'],
    ],
  ],
  [
    'Rows and columns',
    [
      ['Ctrl+Enter', 'Insert a row below'],
      ['Shift+Alt+Down', 'Duplicate the row'],
      ['Alt+Up, Alt+Down', 'Move the row'],
      ['Ctrl+Shift+K', 'Delete the row'],
      ['Shift+Alt+Left, Shift+Alt+Right', 'Narrower, wider column'],
      ['Left, Right on the heading of a group', 'Collapse and expand the group'],
      ['Ctrl+Shift+[', 'Collapse the group of the row'],
    ],
  ],
];

/** Lists the keys of the grid. */
export function showKeys(): void {
  openDialog({
    title: 'Keys of the grid',
    name: 'keys',
    body: keys.map(([title, lines]) =>
      element(
        'section',
        {},
        element('h3', { text: title }),
        element(
          'dl',
          { class: 'key-list' },
          ...lines.flatMap(([key, what]) => [
            element('dt', { text: key }),
            element('dd', { text: what }),
          ]),
        ),
      ),
    ),
  });
}
