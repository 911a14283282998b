import * as vscode from 'vscode';
import { traceOutline, type UnitSettings } from '../engine/index.ts';
import type { CellAddress, EditReply } from '../protocol/messages.ts';
import type { TraceView, TraceWish } from '../protocol/trace-view.ts';
import type { DeskPanel } from './desk-panel.ts';
import type { JobDesk } from './job-desk.ts';
import { pictureView } from './views/picture-view.ts';

/** Folder beside the job in which traced outlines are kept. */
const folder = 'outlines';

function made(
  { list, mode, smooth }: TraceWish,
  title: string,
  settings: UnitSettings,
): ReturnType<typeof traceOutline> {
  return traceOutline(list, { mode, smooth, title, settings });
}

/** The outline that a list of points would make, to be looked at before it is agreed to. */
export function traceView(wish: TraceWish, settings: UnitSettings): TraceView {
  const trace = made(wish, 'Outline', settings);
  if (!trace.ok) return { message: trace.problem.message, sentence: '', picture: undefined };
  const { sentence, drawing } = trace.value;
  return { message: '', sentence, picture: pictureView(drawing) };
}

async function isThere(uri: vscode.Uri): Promise<boolean> {
  try {
    await vscode.workspace.fs.readFile(uri);
    return true;
  } catch (error) {
    if (error instanceof vscode.FileSystemError) return false;
    throw error;
  }
}

function refused(message: string, cell: CellAddress): EditReply {
  return { ok: false, message, cell };
}

/** What is asked for when an outline is agreed to. */
export interface TraceOrder {
  readonly wish: TraceWish;
  /** Name of its file, without folder and ending. */
  readonly name: string;
  /** Cell that is to name it. */
  readonly cell: CellAddress;
}

/** Writes the outline as a file beside the job and its path into the cell: one undo step for the cell. */
export async function writeTrace(
  { wish, name, cell }: TraceOrder,
  desk: JobDesk,
  asked: { readonly panel: DeskPanel; readonly request: number },
): Promise<EditReply> {
  const lock = desk.lock();
  if (lock !== undefined) return refused(lock.message, cell);
  if (!/^[a-z0-9][a-z0-9_-]*$/i.test(name)) {
    return refused(`“${name}” cannot name a file; use letters, digits, - and _.`, cell);
  }
  const trace = made(wish, name, desk.snapshot().settings);
  if (!trace.ok) return refused(trace.problem.message, cell);
  const path = `${folder}/${name}.svg`;
  const uri = vscode.Uri.joinPath(desk.document.uri, '..', path);
  if (await isThere(uri)) {
    return refused(`There is a file ${path} already; give the outline another name.`, cell);
  }
  await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(trace.value.svg));
  const text = `path("${path}#${trace.value.name}")`;
  return desk.edit(asked.panel, asked.request, [{ kind: 'type', cell, text }]);
}
