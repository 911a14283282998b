import * as vscode from 'vscode';
import {
  substituteEdits,
  substituteEffect,
  substitutesFor,
  type Snapshot,
  type SubstituteEffect,
} from '../engine/index.ts';
import { editOrTell } from './edit-or-tell.ts';
import type { JobDesk } from './job-desk.ts';
import { moneyText } from './views/money.ts';

interface MaterialItem extends vscode.QuickPickItem {
  readonly id: string;
}

function itemOf(id: string, { book }: Snapshot): MaterialItem {
  const cells = book.materials.get(id)?.cells;
  const words = ['form', 'thickness'].flatMap((key) => cells?.get(key) ?? []).join(', ');
  return { id, label: cells?.get('name') ?? id, description: words };
}

async function chosen(
  title: string,
  ids: readonly string[],
  snapshot: Snapshot,
): Promise<string | undefined> {
  const items = ids.map((id) => itemOf(id, snapshot));
  return (await vscode.window.showQuickPick(items, { title, matchOnDescription: true }))?.id;
}

/** Lines shown of each kind: a dialog is no report. */
const most = 12;

function some(lines: readonly string[]): readonly string[] {
  const more = lines.length - most;
  return more > 0 ? [...lines.slice(0, most), `and ${String(more)} more`] : lines;
}

function effectText(effect: SubstituteEffect, { settings }: Snapshot): string {
  const money = ({ before, after }: SubstituteEffect['price']): string =>
    `${moneyText(before, settings)} → ${moneyText(after, settings)}`;
  const blank = (text: string): string => (text === '' ? 'blank' : text);
  const figures = effect.figures.map(
    ({ name, column, before, after }) =>
      `${name}, ${column.replaceAll('_', ' ')}: ${blank(before)} → ${blank(after)}`,
  );
  return [
    `Price before tax: ${money(effect.price)}`,
    `Materials in the price: ${money(effect.charge)}`,
    `To buy: ${money(effect.buy)}`,
    '',
    ...some(figures),
    ...(effect.come.length === 0 ? [] : ['', 'New to mend or to look at:', ...some(effect.come)]),
    ...(effect.gone.length === 0 ? [] : ['', 'Mended by it:', ...some(effect.gone)]),
  ].join('\n');
}

/** Puts another material in the place of one throughout a job, after showing what that does. */
export async function substituteMaterial(desk: JobDesk): Promise<void> {
  const before = desk.snapshot();
  const used = before.bill.lines.flatMap(({ source }) =>
    source.table === 'material' ? [source.id] : [],
  );
  const from = await chosen('Substitute Material: which one', used, before);
  if (from === undefined) return;
  const to = await chosen('Substitute Material: by which', substitutesFor(from, before), before);
  if (to === undefined) return;
  const edits = substituteEdits(from, to, before);
  const after = desk.trial(edits);
  if (!after.ok) {
    await vscode.window.showErrorMessage(after.problem.message);
    return;
  }
  const effect = substituteEffect(from, before, after.value);
  const names = [from, to].map((id) => itemOf(id, before).label);
  const count = effect.cells.length;
  const places = count === 1 ? 'one place' : `${String(count)} places`;
  const question = `Put ${names[1] ?? to} in the place of ${names[0] ?? from} in ${places}?`;
  const agree = 'Substitute';
  const detail = effectText(effect, before);
  const answer = await vscode.window.showWarningMessage(question, { modal: true, detail }, agree);
  if (answer !== agree) return;
  await editOrTell(desk, edits);
}
