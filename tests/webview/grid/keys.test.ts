import { describe, expect, test } from 'vitest';
import { gridCommand, type GridCommand } from '../../../webview/grid/keys.ts';

/** `Ctrl+Shift+K` as the event that the browser sends. */
function pressed(keys: string): GridCommand | undefined {
  const parts = keys.split('+');
  const key = parts.at(-1) ?? '';
  return gridCommand({
    key: key === 'Space' ? ' ' : key,
    ctrlKey: parts.includes('Ctrl'),
    shiftKey: parts.includes('Shift'),
    altKey: parts.includes('Alt'),
    metaKey: parts.includes('Cmd'),
  });
}

describe('gridCommand', () => {
  test.each([
    ['ArrowDown', { do: 'move', rows: 1, columns: 0, extend: false }],
    ['Shift+ArrowLeft', { do: 'move', rows: 0, columns: -1, extend: true }],
    ['Ctrl+ArrowRight', { do: 'jump', rows: 0, columns: 1, extend: false }],
    ['Home', { do: 'go', to: 'row-start', extend: false }],
    ['Ctrl+End', { do: 'go', to: 'end', extend: false }],
    ['Cmd+Shift+Home', { do: 'go', to: 'start', extend: true }],
    ['Shift+PageDown', { do: 'page', by: 1, extend: true }],
    ['Tab', { do: 'step', along: 'rows', by: 1 }],
    ['Shift+Tab', { do: 'step', along: 'rows', by: -1 }],
    ['Shift+Enter', { do: 'step', along: 'columns', by: -1 }],
    ['Enter', { do: 'enter' }],
    ['F2', { do: 'edit' }],
    ['Delete', { do: 'clear' }],
    ['Shift+Space', { do: 'select', what: 'row' }],
    ['Ctrl+Space', { do: 'select', what: 'column' }],
    ['Ctrl+a', { do: 'select', what: 'all' }],
    ['Ctrl+Enter', { do: 'insert-row' }],
    ['Alt+Shift+ArrowDown', { do: 'duplicate-row' }],
    ['Alt+ArrowUp', { do: 'move-row', by: -1 }],
    ['Ctrl+Shift+K', { do: 'delete-row' }],
    ['Alt+Shift+ArrowRight', { do: 'resize', by: 12 }],
  ])('%s is the grid’s', (keys, command) => {
    expect(pressed(keys)).toEqual(command);
  });

  test.each(['Ctrl+z', 'Ctrl+y', 'Ctrl+s', 'Ctrl+p', 'Ctrl+Shift+p', 'Ctrl+w', 'Ctrl+c', 'Ctrl+v'])(
    '%s goes its own way',
    (keys) => {
      expect(pressed(keys)).toBeUndefined();
    },
  );

  test.each(['a', '=', '5', 'Space'])('%s is typed', (keys) => {
    expect(pressed(keys)).toBeUndefined();
  });
});
