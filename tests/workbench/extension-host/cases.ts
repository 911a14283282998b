import * as vscode from 'vscode';
import type { CaseName } from './case-names.ts';
import type { Exports } from '../../../extension/host/activate.ts';

const id = 'panelwright.panelwright';
const viewType = 'panelwright.grid';
const sample = 'front-door-pair.paneljob';

function same(found: unknown, wanted: unknown): void {
  const [left, right] = [JSON.stringify(found), JSON.stringify(wanted)];
  if (left !== right) throw new Error(`found ${left}, wanted ${right}`);
}

async function until(what: string, ask: () => boolean | Promise<boolean>): Promise<void> {
  for (let tried = 0; tried < 200; tried += 1) {
    if (await ask()) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`waited in vain for ${what}`);
}

function file(name: string): vscode.Uri {
  const folder = vscode.workspace.workspaceFolders?.[0];
  if (folder === undefined) throw new Error('no folder is open');
  return vscode.Uri.joinPath(folder.uri, name);
}

async function write(name: string, text: string): Promise<vscode.Uri> {
  await vscode.workspace.fs.writeFile(file(name), new TextEncoder().encode(text));
  return file(name);
}

function activeInput(): unknown {
  return vscode.window.tabGroups.activeTabGroup.activeTab?.input;
}

function gridIsInFront(): boolean {
  const input = activeInput();
  return input instanceof vscode.TabInputCustom && input.viewType === viewType;
}

async function openGrid(name: string): Promise<vscode.TextDocument> {
  await vscode.commands.executeCommand('vscode.open', file(name));
  await until('the grid', gridIsInFront);
  return vscode.workspace.openTextDocument(file(name));
}

async function extension(): Promise<vscode.Extension<Exports>> {
  const found = vscode.extensions.getExtension<Exports>(id);
  if (found === undefined) throw new Error(`${id} is not installed`);
  await found.activate();
  return found;
}

const smallJob = `format = 1

[job]
title = "Small"
client = "Demo client"
vehicle = "Demo coupe"

date = 2026-11-25
units = "in"
currency = "USD"

[[panel]]
id = "door"

name = "Front door"

order = 1000
`;

/** What must hold in every extension host. Names are sentences; each case starts without editors. */
export const cases: Readonly<Record<CaseName, () => Promise<void>>> = {
  'a job opens as a grid': async () => {
    await openGrid(sample);
  },

  'a job opens as text when asked, and as a grid again': async () => {
    await openGrid(sample);
    await vscode.commands.executeCommand('panelwright.openAsText');
    await until('the text', () => activeInput() instanceof vscode.TabInputText);
    same(vscode.window.activeTextEditor?.document.languageId, 'panelwright-job');
    await vscode.commands.executeCommand('panelwright.openAsGrid');
    await until('the grid', gridIsInFront);
  },

  'a shop book is a text of its own language': async () => {
    const book = await vscode.workspace.openTextDocument(
      await write('own.panelbook', 'format = 1\n'),
    );
    same(book.languageId, 'panelwright-book');
  },

  'a comparison of a job shows texts, not two grids': async () => {
    const other = await write('other.paneljob', smallJob);
    await vscode.commands.executeCommand('vscode.diff', file(sample), other);
    await until('the comparison', () => activeInput() instanceof vscode.TabInputTextDiff);
  },

  'switching units changes one line, and undo takes it back': async () => {
    await write('small.paneljob', smallJob);
    const document = await openGrid('small.paneljob');
    await vscode.commands.executeCommand('panelwright.switchUnits');
    await until('the edit', () => document.getText().includes('units = "mm"'));
    same(document.getText(), smallJob.replace('units = "in"', 'units = "mm"'));
    await vscode.commands.executeCommand('undo');
    await until('the undo', () => document.getText() === smallJob);
  },

  'opening a job does not touch it': async () => {
    const document = await openGrid(sample);
    await new Promise((resolve) => setTimeout(resolve, 300));
    same(document.isDirty, false);
  },

  'a broken line is told in the Problems view': async () => {
    const uri = await write('broken.paneljob', `${smallJob}\n[[part]]\nid = "ring\n`);
    await openGrid('broken.paneljob');
    await until('a problem', () => vscode.languages.getDiagnostics(uri).length > 0);
    const lines = smallJob.split('\n').length;
    const told = vscode.languages.getDiagnostics(uri);
    same(
      told.some((one) => one.source === 'Panelwright' && one.range.start.line >= lines - 1),
      true,
    );
  },

  'heavy work answers from a worker and tells how far it is': async () => {
    const { heavyWork } = (await extension()).exports;
    const shares: number[] = [];
    const answer = await heavyWork(
      { kind: 'echo', text: 'ring', steps: 1000 },
      { onProgress: (share) => shares.push(share) },
    );
    same(
      { answer, reports: shares.length },
      { answer: { text: 'ring', steps: 1000 }, reports: 10 },
    );
  },

  'heavy work that would never end is ended by cancelling': async () => {
    const { heavyWork } = (await extension()).exports;
    const source = new vscode.CancellationTokenSource();
    setTimeout(() => {
      source.cancel();
    }, 200);
    const answer = await heavyWork(
      { kind: 'echo', text: 'ring', steps: Number.MAX_SAFE_INTEGER },
      { token: source.token },
    );
    same(answer ?? 'nothing', 'nothing');
  },

  'every command of the manifest is there': async () => {
    const manifest = (await extension()).packageJSON as {
      readonly contributes: { readonly commands: readonly { readonly command: string }[] };
    };
    const known = new Set(await vscode.commands.getCommands(true));
    const missing = manifest.contributes.commands.filter(({ command }) => !known.has(command));
    same(missing, []);
  },
};
