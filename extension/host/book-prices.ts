import * as vscode from 'vscode';
import {
  isNews,
  matchPrices,
  percentChangeText,
  priceEdits,
  readPriceList,
  type PriceMatch,
} from '../engine/index.ts';
import { editOrTell } from './edit-or-tell.ts';
import type { JobDesk } from './job-desk.ts';
import { today } from './new-job.ts';

async function listFromFile(): Promise<string | undefined> {
  const [uri] =
    (await vscode.window.showOpenDialog({
      title: 'Import Prices: list',
      filters: { 'Price lists': ['csv', 'tsv', 'txt'] },
    })) ?? [];
  return uri && new TextDecoder().decode(await vscode.workspace.fs.readFile(uri));
}

async function chosenList(): Promise<string | undefined> {
  const places = [
    {
      label: 'From the clipboard',
      description: 'A table copied from a sheet or a mail',
      file: false,
    },
    { label: 'From a file…', description: 'CSV, or columns between tabs', file: true },
  ];
  const picked = await vscode.window.showQuickPick(places, { title: 'Import Prices' });
  if (picked === undefined) return undefined;
  return picked.file ? listFromFile() : vscode.env.clipboard.readText();
}

function changeWords({ change, old, now }: PriceMatch): string {
  if (change === undefined) return `${old} → ${now}`;
  return `${old} → ${now} (${percentChangeText(change)})`;
}

const certainty: Readonly<Record<PriceMatch['how'], string>> = {
  id: 'by its id',
  name: 'by its name',
  likely: 'likely: look twice',
  none: '',
};

interface MatchItem extends vscode.QuickPickItem {
  readonly match?: PriceMatch;
}

function itemsOf(matches: readonly PriceMatch[]): readonly MatchItem[] {
  const news = matches.filter(isNews).map((match): MatchItem => ({
    label: match.text,
    description: `${match.pack ?? ''} · ${certainty[match.how]}`,
    detail: changeWords(match),
    picked: match.how !== 'likely',
    match,
  }));
  const faulty = matches.filter(({ fault }) => fault !== '');
  const others = faulty.map(({ text, fault, line }): MatchItem => ({
    label: text === '' ? `line ${String(line)}` : text,
    description: 'not taken',
    detail: fault,
  }));
  const heading: MatchItem = {
    label: 'Cannot be taken',
    kind: vscode.QuickPickItemKind.Separator,
  };
  return others.length === 0 ? news : [...news, heading, ...others];
}

/** Holds a price list against the book, and writes the prices that are agreed to as one edit. */
export async function importPrices(desk: JobDesk): Promise<void> {
  const text = await chosenList();
  if (text === undefined) return;
  const { book, settings, shown } = desk.snapshot();
  const matches = matchPrices(readPriceList(text), book, settings);
  const items = itemsOf(matches);
  if (items.length === 0) {
    await vscode.window.showInformationMessage(
      'The list has no price that differs from the book’s.',
    );
    return;
  }
  const news = matches.filter(isNews).length;
  const differ = news === 1 ? '1 price differs' : `${String(news)} prices differ`;
  const picked = await vscode.window.showQuickPick(items, {
    title: `Import Prices: ${String(matches.length)} lines, ${differ} from the book’s`,
    placeHolder: 'Prices that are written into the book, as one edit',
    canPickMany: true,
    matchOnDescription: true,
  });
  const agreed = (picked ?? []).flatMap(({ match }) => match ?? []);
  if (agreed.length === 0) return;
  await editOrTell(desk, priceEdits(shown, agreed, today()));
}
