import type { PanesParts } from '../panes.ts';
import type { PanelHooks } from './panel.ts';
import type { StatusLine } from './status-line.ts';

/** What pictures beside the grid may do to it. */
export function pictureHooks(
  { app, ask, memory, post }: PanesParts,
  status: StatusLine,
): PanelHooks {
  return {
    ask,
    post,
    memory,
    choose: (row) => {
      app.goTo({ ...row, column: app.grid.activeCell?.column ?? 'name' }, false);
    },
    place: (row, x, y) => app.edits.send([{ kind: 'place', row, x, y }]),
    say: (text) => {
      status.say(text);
    },
  };
}
