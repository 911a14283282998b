import type * as vscode from 'vscode';
import type { Desks } from './desks.ts';
import type { JobDesk } from './job-desk.ts';
import { newFromTemplate, saveAsTemplate, takeFromTemplate } from './templates.ts';

/** Runs something on the desk of the file a command was given, or of the grid in front. */
export type WithDesk = (given: unknown, run: (desk: JobDesk) => Promise<void>) => Promise<void>;

type Run = (given: unknown) => Promise<void>;

/** Commands of templates, shop books and stock, by name. */
export function reuseCommands(
  desks: Desks,
  storage: vscode.Uri,
  withDesk: WithDesk,
): readonly (readonly [name: string, run: Run])[] {
  const onJob =
    (run: (desk: JobDesk) => Promise<void>): Run =>
    (given) =>
      withDesk(given, run);
  return [
    ['newFromTemplate', (given) => newFromTemplate(given, desks, storage)],
    ['saveAsTemplate', onJob((desk) => saveAsTemplate(desk, storage))],
    ['takeFromTemplate', onJob((desk) => takeFromTemplate(desk, storage))],
  ];
}
