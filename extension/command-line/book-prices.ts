import {
  isNews,
  matchPrices,
  percentChangeText,
  priceEdits,
  readBook,
  readFile,
  readPriceList,
  settingsOf,
  type PriceMatch,
} from '../engine/index.ts';
import { refused, unreadable } from './endings.ts';
import type { ReuseRequest } from './reuse-arguments.ts';
import type { ExitCode, World } from './world.ts';
import { inColumn, writeEdits } from './write-edits.ts';

const marks: Readonly<Record<PriceMatch['how'], string>> = {
  id: ' ',
  name: ' ',
  likely: '?',
  none: '–',
};

function changeText({ change, old, now }: PriceMatch): string {
  if (old === now) return 'as it was';
  if (change === undefined) return '';
  return percentChangeText(change);
}

function matchLine(match: PriceMatch): string {
  const { how, line, text, pack = '', old, now, fault } = match;
  const head = `${marks[how]} ${inColumn(String(line), 4)} ${inColumn(text, 34)}`;
  if (fault !== '') return `${head} ${fault}\n`;
  return `${head} ${inColumn(pack, 20)} ${old} → ${now}  ${changeText(match)}\n`;
}

/** Holds a price list against a book; what is matched for certain is written where that is asked for. */
export function importPrices(
  request: Extract<ReuseRequest, { command: 'prices' }>,
  world: World,
): ExitCode {
  const { book, list, date, write } = request;
  const text = world.read(book);
  if (text === undefined) return refused(unreadable(book), world);
  const prices = list === undefined ? world.input() : world.read(list);
  if (prices === undefined) return refused(unreadable(list ?? ''), world);
  const reading = readFile(text);
  const file = readBook({ file: reading, job: new Map() });
  const matches = matchPrices(readPriceList(prices), file, settingsOf(reading.head));
  for (const match of matches) world.out(matchLine(match));
  const agreed = matches.filter((match) => isNews(match) && match.how !== 'likely');
  const likely = matches.filter((match) => isNews(match) && match.how === 'likely').length;
  world.out(`${String(agreed.length)} of ${String(matches.length)} prices are news.\n`);
  if (likely > 0) world.out(`${String(likely)} more are only likely and are not written.\n`);
  return writeEdits({ file: book, reading, write }, priceEdits(reading, agreed, date), world);
}
