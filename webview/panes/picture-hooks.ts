import type { Ask } from '../suggest/suggester.ts';
import type { ViewMemory } from '../view-state.ts';
import type { Whole } from '../whole.ts';
import type { PanelHooks } from './panel.ts';
import type { StatusLine } from './status-line.ts';

/** What pictures beside the grid may do to it. */
export function pictureHooks(
  {
    app,
    ask,
    memory,
    post,
  }: {
    readonly app: Whole;
    readonly ask: Ask;
    readonly memory: ViewMemory;
    readonly post: PanelHooks['post'];
  },
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
    lock: (line, sheet, row) => app.edits.send([{ kind: 'lock', line, sheet, row }]),
    say: (text) => {
      status.say(text);
    },
  };
}
