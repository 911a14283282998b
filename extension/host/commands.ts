import * as vscode from 'vscode';
import { billCsv, fileForm, type Edit, type FileForm } from '../engine/index.ts';
import type { CellAddress } from '../protocol/messages.ts';
import { compareCommands } from './compare/compare-commands.ts';
import type { Comparisons } from './compare/comparisons.ts';
import type { Desks } from './desks.ts';
import { editOrTell } from './edit-or-tell.ts';
import { exportCuts, exportPatterns } from './export-patterns.ts';
import { gridViewType } from './grid-editor.ts';
import type { JobDesk } from './job-desk.ts';
import { newJob } from './new-job.ts';
import { previewPaper, writePaper } from './paper.ts';
import { reuseCommands } from './reuse-commands.ts';
import { besideJob, writeFile } from './write-file.ts';

/** Commands that the grid itself carries out, where its cursor is. */
const gridCommands = [
  'insertRow',
  'insertKit',
  'answerAsks',
  'traceOutline',
  'duplicateRow',
  'moveRowUp',
  'moveRowDown',
  'deleteRow',
  'renameRowId',
  'showWhereFrom',
  'showPanel',
  'showMixPlan',
  'showSchedule',
  'lockInPlace',
  'compareOptions',
  'showActuals',
  'find',
  'nextChange',
  'previousChange',
] as const;

/** File of the grid in the tab in front, which may still be opening. */
function gridInFront(): vscode.Uri | undefined {
  const input = vscode.window.tabGroups.activeTabGroup.activeTab?.input;
  return input instanceof vscode.TabInputCustom && input.viewType === gridViewType
    ? input.uri
    : undefined;
}

/** File a command is about: the one it was given, else the active grid's, else the active text editor's. */
function targetUri(given: unknown, desks: Desks): vscode.Uri | undefined {
  if (given instanceof vscode.Uri) return given;
  const grid = gridInFront() ?? desks.active?.desk.document.uri;
  return grid ?? vscode.window.activeTextEditor?.document.uri;
}

async function anyDesk(given: unknown, desks: Desks): Promise<JobDesk | undefined> {
  const uri = targetUri(given, desks);
  if (uri === undefined) return undefined;
  const known = desks.known(uri);
  if (known !== undefined) return known;
  const document = await vscode.workspace.openTextDocument(uri);
  const ours = ['panelwright-job', 'panelwright-book'].includes(document.languageId);
  return ours ? desks.desk(document) : undefined;
}

/** The desk of a job or of a shop book, whichever is asked for. */
async function deskOf(
  given: unknown,
  desks: Desks,
  form: FileForm = 'job',
): Promise<JobDesk | undefined> {
  const desk = await anyDesk(given, desks);
  return desk !== undefined && fileForm(desk.snapshot().shown) === form ? desk : undefined;
}

async function needsJob(): Promise<void> {
  await vscode.window.showInformationMessage('Open a job file (*.paneljob) first.');
}

async function openAsText(given: unknown, line: unknown, desks: Desks): Promise<void> {
  const uri = targetUri(given, desks);
  if (uri === undefined) return needsJob();
  const at = typeof line === 'number' && line > 0 ? new vscode.Position(line - 1, 0) : undefined;
  // The text of the grid in front opens beside it, so that each is seen to follow the other.
  const grid = gridInFront() ?? desks.active?.desk.document.uri;
  const inFront = grid?.toString() === uri.toString();
  await vscode.commands.executeCommand('vscode.openWith', uri, 'default', {
    viewColumn: inFront ? vscode.ViewColumn.Beside : vscode.ViewColumn.Active,
    ...(at === undefined ? {} : { selection: new vscode.Range(at, at) }),
  });
}

async function openAsGrid(given: unknown, desks: Desks): Promise<void> {
  const uri = targetUri(given, desks);
  if (uri === undefined) return needsJob();
  await vscode.commands.executeCommand('vscode.openWith', uri, gridViewType);
}

async function switchUnits(given: unknown, desks: Desks): Promise<void> {
  const desk = await deskOf(given, desks);
  if (desk === undefined) return needsJob();
  const units = desk.snapshot().settings.units === 'in' ? 'mm' : 'in';
  const edit: Edit = { kind: 'set-head', key: 'units', text: units };
  await editOrTell(desk, [edit]);
}

async function exportBill(given: unknown, desks: Desks): Promise<void> {
  const desk = await deskOf(given, desks);
  if (desk === undefined) return needsJob();
  await writeFile({
    place: besideJob(desk.document.uri, '-materials.csv'),
    title: 'Export Bill of Materials',
    filters: { 'Comma-separated values': ['csv'] },
    bytes: () => {
      const { bill, settings } = desk.snapshot();
      return new TextEncoder().encode(billCsv(bill, settings));
    },
    name: 'Bill of materials',
  });
}

async function withDesk(
  given: unknown,
  desks: Desks,
  run: (desk: JobDesk) => Promise<void>,
): Promise<void> {
  const desk = await deskOf(given, desks);
  return desk === undefined ? needsJob() : run(desk);
}

async function withBook(
  given: unknown,
  desks: Desks,
  run: (desk: JobDesk) => Promise<void>,
): Promise<void> {
  const desk = await deskOf(given, desks, 'book');
  if (desk !== undefined) return run(desk);
  await vscode.window.showInformationMessage('Open a shop book (*.panelbook) first.');
}

interface FocusArgument extends CellAddress {
  readonly uri: string;
}

async function focusCell(argument: FocusArgument, desks: Desks): Promise<void> {
  const uri = vscode.Uri.parse(argument.uri);
  const { table, id, occurrence, column } = argument;
  await vscode.commands.executeCommand('vscode.openWith', uri, gridViewType);
  await desks.focus(uri, { table, id, occurrence, column });
}

/** Registers every command of the manifest. */
export function registerCommands(
  desks: Desks,
  storage: vscode.Uri,
  comparisons: Comparisons,
): readonly vscode.Disposable[] {
  const register = (name: string, run: (...args: unknown[]) => Promise<void>): vscode.Disposable =>
    vscode.commands.registerCommand(`panelwright.${name}`, run);
  return [
    register('newJob', (folder) => newJob(folder)),
    register('openAsText', (uri, line) => openAsText(uri, line, desks)),
    register('openAsGrid', (uri) => openAsGrid(uri, desks)),
    register('switchUnits', (uri) => switchUnits(uri, desks)),
    register('exportBill', (uri) => exportBill(uri, desks)),
    register('previewPaper', (uri) => withDesk(uri, desks, previewPaper)),
    register('writePaper', (uri) => withDesk(uri, desks, writePaper)),
    register('exportPatterns', (uri) => withDesk(uri, desks, exportPatterns)),
    register('exportCutLayouts', (uri) => withDesk(uri, desks, exportCuts)),
    register('focusCell', (argument) => focusCell(argument as FocusArgument, desks)),
    ...reuseCommands({
      desks,
      storage,
      withJob: (given, run) => withDesk(given, desks, run),
      withBook: (given, run) => withBook(given, desks, run),
      withAny: async (given, run) => {
        const desk = await anyDesk(given, desks);
        return desk === undefined ? needsJob() : run(desk);
      },
    }).map(([name, run]) => register(name, run)),
    ...compareCommands(desks, comparisons, (given, run) => withDesk(given, desks, run)).map(
      ([name, run]) => register(name, run),
    ),
    ...gridCommands.map((name) =>
      register(name, async (argument) => {
        const active = await desks.activeIn(gridInFront());
        if (active === undefined) return needsJob();
        // Menu calls bring the cell they were opened on; palette and keys act where the cursor is.
        const context = isContext(argument) ? JSON.stringify(argument) : '';
        active.panel.post({ type: 'do', name, argument: context });
      }),
    ),
  ];
}

function isContext(argument: unknown): argument is Record<string, unknown> {
  return typeof argument === 'object' && argument !== null && 'webviewSection' in argument;
}
