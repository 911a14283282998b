import * as vscode from 'vscode';
import type { Desks } from '../desks.ts';
import type { JobDesk } from '../job-desk.ts';
import { showCellHistory } from './cell-history.ts';
import { previewChangeOrder, writeChangeOrder } from './change-order.ts';
import type { Comparisons } from './comparisons.ts';
import { chosenEarlier, earlierFile, type EarlierKind } from './earlier.ts';

/** Runs something on the desk of the file a command was given, or of the grid in front. */
type WithDesk = (given: unknown, run: (desk: JobDesk) => Promise<void>) => Promise<void>;

type Run = (given: unknown, more?: unknown) => Promise<void>;

async function compareWith(
  kind: EarlierKind,
  desk: JobDesk,
  comparisons: Comparisons,
): Promise<void> {
  const earlier = await chosenEarlier(kind, desk.document.uri);
  if (earlier !== undefined) comparisons.start(desk, earlier);
}

/** A file may be given by who runs the command, as its second word; else the person chooses one. */
async function compareWithFile(
  desk: JobDesk,
  file: unknown,
  comparisons: Comparisons,
): Promise<void> {
  if (!(file instanceof vscode.Uri)) return compareWith('file', desk, comparisons);
  const earlier = await earlierFile(file);
  if (earlier !== undefined) comparisons.start(desk, earlier);
}

async function cellHistory(desks: Desks, comparisons: Comparisons): Promise<void> {
  const cell = desks.active?.panel.cursor;
  if (desks.active === undefined || cell === undefined) {
    await vscode.window.showInformationMessage('Put the cursor on a cell of the grid first.');
    return;
  }
  const { desk } = desks.active;
  const earlier = await showCellHistory(desk, cell);
  if (earlier !== undefined) comparisons.start(desk, earlier);
}

/** Commands that hold a job against another version of it, by name. */
export function compareCommands(
  desks: Desks,
  comparisons: Comparisons,
  withDesk: WithDesk,
): readonly (readonly [name: string, run: Run])[] {
  const on =
    (kind: EarlierKind): Run =>
    (given) =>
      withDesk(given, (desk) => compareWith(kind, desk, comparisons));
  return [
    ['compareWithHead', on('head')],
    ['compareWithRevision', on('revision')],
    ['compareWithBranch', on('branch')],
    [
      'compareWithFile',
      (given, file) => withDesk(given, (desk) => compareWithFile(desk, file, comparisons)),
    ],
    [
      'stopComparing',
      (given) =>
        withDesk(given, (desk) => {
          comparisons.stop(desk);
          return Promise.resolve();
        }),
    ],
    ['showCellHistory', () => cellHistory(desks, comparisons)],
    ['previewChangeOrder', (given) => withDesk(given, previewChangeOrder)],
    ['writeChangeOrder', (given) => withDesk(given, writeChangeOrder)],
  ];
}
