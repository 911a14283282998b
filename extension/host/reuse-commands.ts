import type * as vscode from 'vscode';
import { bookOutMaterials } from './book-out.ts';
import { showEffect } from './book-effect.ts';
import { importPrices } from './book-prices.ts';
import { takeOverRows } from './book-rows.ts';
import type { Desks } from './desks.ts';
import { freezePrices } from './freeze-prices.ts';
import type { JobDesk } from './job-desk.ts';
import { addOption } from './options.ts';
import { updateRates } from './rates.ts';
import { saveRowsAsGroup } from './row-groups.ts';
import { substituteMaterial } from './substitute.ts';
import { newFromTemplate, saveAsTemplate, takeFromTemplate } from './templates.ts';
import { exportWorkbook } from './workbook-file.ts';

type OnDesk = (desk: JobDesk) => Promise<void>;

type Run = (given: unknown) => Promise<void>;

/** What these commands are given to work with. */
export interface ReuseGround {
  readonly desks: Desks;
  /** Folder of what a person keeps for all workspaces. */
  readonly storage: vscode.Uri;
  /** Runs something on the desk of the job, or of the shop book, that a command was given or is in front. */
  readonly withJob: (given: unknown, run: OnDesk) => Promise<void>;
  readonly withBook: (given: unknown, run: OnDesk) => Promise<void>;
  /** Either of the two. */
  readonly withAny: (given: unknown, run: OnDesk) => Promise<void>;
}

/** Commands of templates, options, actuals, shop books and stock, by name. */
export function reuseCommands(ground: ReuseGround): readonly (readonly [name: string, run: Run])[] {
  const { desks, storage } = ground;
  const onJob =
    (run: OnDesk): Run =>
    (given) =>
      ground.withJob(given, run);
  const onBook =
    (run: OnDesk): Run =>
    (given) =>
      ground.withBook(given, run);
  return [
    ['newFromTemplate', (given) => newFromTemplate(given, desks, storage)],
    ['saveAsTemplate', onJob((desk) => saveAsTemplate(desk, storage))],
    ['takeFromTemplate', onJob((desk) => takeFromTemplate(desk, storage))],
    ['saveRowsAsGroup', onJob((desk) => saveRowsAsGroup(desk, desks))],
    ['freezePrices', onJob(freezePrices)],
    ['substituteMaterial', onJob(substituteMaterial)],
    ['bookOutMaterials', onJob((desk) => bookOutMaterials(desk, desks))],
    ['addOption', onJob((desk) => addOption(desk, desks))],
    ['exportWorkbook', onJob(exportWorkbook)],
    ['updateRates', (given) => ground.withAny(given, updateRates)],
    ['importPrices', onBook(importPrices)],
    ['showEffect', onBook(showEffect)],
    ['takeOver', onBook((desk) => takeOverRows(desk, desks))],
  ];
}
