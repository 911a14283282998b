import * as vscode from 'vscode';
import {
  askableCells,
  jobFromTemplate,
  takeEdits,
  templateFromJob,
  templateNews,
} from '../engine/index.ts';
import type { Desks } from './desks.ts';
import { editOrTell } from './edit-or-tell.ts';
import { gridViewType } from './grid-editor.ts';
import type { JobDesk } from './job-desk.ts';
import { bookFor, exists, placeForJob, startSettings, today } from './new-job.ts';
import {
  findTemplates,
  ownFolder,
  sharedFolder,
  templateEnding,
  type FoundTemplate,
} from './template-files.ts';

async function chosenTemplate(
  title: string,
  templates: readonly FoundTemplate[],
): Promise<FoundTemplate | undefined> {
  const items = templates.map((found) => ({
    label: found.template.name,
    description: found.where,
    detail: found.template.help,
    found,
  }));
  const placeHolder = 'A job to begin with, which asks for its sizes';
  const picked = await vscode.window.showQuickPick(items, { title, placeHolder });
  return picked?.found;
}

function nameOfFile(uri: vscode.Uri): string {
  return uri.path
    .slice(uri.path.lastIndexOf('/') + 1)
    .replace(/\.paneljob$/, '')
    .replaceAll('-', ' ');
}

/** Asks which template and where, writes the job and opens its grid, which asks the questions. */
export async function newFromTemplate(
  given: unknown,
  desks: Desks,
  storage: vscode.Uri,
): Promise<void> {
  const chosen = await chosenTemplate('New Job from Template', await findTemplates(storage));
  const uri = chosen && (await placeForJob(given));
  if (chosen === undefined || uri === undefined) return;
  const book = await bookFor(uri);
  const start = { title: nameOfFile(uri), date: today(), ...startSettings(), book };
  const text = jobFromTemplate(chosen.template.text, start);
  if (!text.ok) {
    await vscode.window.showErrorMessage(text.problem.message);
    return;
  }
  await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text.value));
  desks.doWhenReady(uri, 'answerAsks');
  await vscode.commands.executeCommand('vscode.openWith', uri, gridViewType);
}

async function placeForTemplate(
  name: string,
  storage: vscode.Uri,
): Promise<vscode.Uri | undefined> {
  const file = name
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '');
  const shared = sharedFolder();
  const places = [
    ...(shared === undefined
      ? []
      : [{ label: 'This workspace', description: 'panel-templates', folder: shared }]),
    {
      label: 'Mine',
      description: 'For all workspaces on this machine',
      folder: ownFolder(storage),
    },
  ];
  const picked = await vscode.window.showQuickPick(places, {
    title: 'Save Job as Template: where it is kept',
  });
  const base = file === '' ? 'template' : file;
  return picked && vscode.Uri.joinPath(picked.folder, `${base}${templateEnding}`);
}

/** Name of a template and what it is for, as a person says. */
async function wordsOf(
  value: string,
): Promise<{ readonly name: string; readonly help: string } | undefined> {
  const title = 'Save Job as Template';
  const name = await vscode.window.showInputBox({ title, prompt: 'Name of the template', value });
  if (name === undefined || name.trim() === '') return undefined;
  const prompt = 'What it is for, in a line';
  const help = await vscode.window.showInputBox({ title, prompt });
  return help === undefined ? undefined : { name: name.trim(), help: help.trim() };
}

/** Saves a job as a template, with questions for the cells that are chosen. */
export async function saveAsTemplate(desk: JobDesk, storage: vscode.Uri): Promise<void> {
  const { reading, shown } = desk.snapshot();
  const words = await wordsOf(shown.head.get('title')?.text ?? '');
  if (words === undefined) return;
  const { name, help } = words;
  const items = askableCells(shown).map((cell) => ({
    label: cell.name,
    description: cell.text,
    cell,
  }));
  const picked = await vscode.window.showQuickPick(items, {
    title: 'Save Job as Template: what it asks for',
    placeHolder: 'Cells that are asked for; all others stay as they are',
    canPickMany: true,
    matchOnDescription: true,
  });
  const uri = picked && (await placeForTemplate(name, storage));
  if (picked === undefined || uri === undefined) return;
  const before = await textOf(uri);
  const start = { name, help, asks: picked.map(({ cell }) => cell) };
  const text = templateFromJob(reading.text, start, before);
  if (!text.ok) {
    await vscode.window.showErrorMessage(text.problem.message);
    return;
  }
  if (before !== undefined && !(await agreedToReplace(name))) return;
  await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text.value));
  const open = 'Open';
  const told = `The template “${name}” is kept.`;
  const next = await vscode.window.showInformationMessage(told, open);
  if (next === open) await vscode.commands.executeCommand('vscode.openWith', uri, gridViewType);
}

async function textOf(uri: vscode.Uri): Promise<string | undefined> {
  if (!(await exists(uri))) return undefined;
  return new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
}

async function agreedToReplace(name: string): Promise<boolean> {
  const replace = 'Replace';
  const question = `There is a template “${name}” already. Replace it? Its version is counted up, so that jobs made from it can take what is new.`;
  return (await vscode.window.showWarningMessage(question, { modal: true }, replace)) === replace;
}

async function templateOf(desk: JobDesk, storage: vscode.Uri): Promise<FoundTemplate | undefined> {
  const templates = await findTemplates(storage);
  const word = desk.snapshot().shown.head.get('template')?.text ?? '';
  const own = templates.find(({ template }) => template.word === word);
  return own ?? chosenTemplate('Take from Template', templates);
}

/** Shows what a job's template has that the job has not, and takes the rows that are chosen. */
export async function takeFromTemplate(desk: JobDesk, storage: vscode.Uri): Promise<void> {
  const found = await templateOf(desk, storage);
  if (found === undefined) return;
  const { template } = found;
  const news = templateNews(desk.snapshot().shown, template.reading);
  if (news.rows.length === 0) {
    await vscode.window.showInformationMessage(
      `The template “${template.name}” has no row that this job lacks.`,
    );
    return;
  }
  const items = news.rows.map((row) => ({
    label: row.name,
    description: [row.table, row.kind, row.id].filter((text) => text !== '').join(' · '),
    detail: cellsInWords(row.cells),
    row,
  }));
  const versions =
    news.was === news.now
      ? ''
      : ` (version ${String(news.now)}, this job is of ${String(news.was)})`;
  const picked = await vscode.window.showQuickPick(items, {
    title: `Take from Template: ${template.name}${versions}`,
    placeHolder: 'Rows that this job lacks; those chosen are written as one edit',
    canPickMany: true,
    matchOnDescription: true,
  });
  if (picked === undefined || picked.length === 0) return;
  await editOrTell(
    desk,
    takeEdits(
      news,
      picked.map(({ row }) => row),
    ),
  );
}

function cellsInWords(cells: Readonly<Record<string, string>>): string {
  return Object.entries(cells)
    .filter(([key]) => key !== 'name' && key !== 'kind')
    .map(([key, text]) => `${key.replaceAll('_', ' ')} ${text}`)
    .join(' · ');
}
