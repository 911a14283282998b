import {
  cutDrawings,
  moneyText,
  otherStocks,
  canHold,
  placementOwners,
  rowName,
  type BillLine,
  type Drawing,
  type Snapshot,
} from '../../engine/index.ts';
import type { CutOther, CutView, CutWish } from '../../protocol/cut-view.ts';
import { pictureView } from './picture-view.ts';

type Laid = NonNullable<BillLine['laid']>;

function cutLines(snapshot: Snapshot): readonly BillLine[] {
  return snapshot.bill.lines.filter(({ laid }) => laid !== undefined);
}

function chosenLine(wish: CutWish, snapshot: Snapshot): BillLine | undefined {
  const lines = cutLines(snapshot);
  return lines.find(({ id }) => id === wish.line) ?? lines[0];
}

function nothing(wish: CutWish, message: string): CutView {
  const empty = { lines: [], sheets: [], facts: [], words: [], rows: {} };
  const still = { drawing: undefined, settling: false, about: '', lockable: false, locked: [] };
  return { wish, ...empty, title: 'Cut layout', message, ...still };
}

function rowsOf(drawing: Drawing, snapshot: Snapshot): Readonly<Record<string, string>> {
  const name = rowName(snapshot.workbook);
  const rows = drawing.marks.flatMap(({ row }) => (row === undefined ? [] : [row]));
  return Object.fromEntries(rows.map((row) => [`${row.table}/${row.id}`, name(row)]));
}

function factsOf(line: BillLine, snapshot: Snapshot): readonly string[] {
  const { currency } = snapshot.settings;
  const words = line.steps.map(({ text }) => text);
  // The sizes stand in the picture; what the layout comes to begins after them.
  const start = words.findIndex((text) => text.startsWith('laid '));
  const end = words.findIndex((text) => text.startsWith('needed: '));
  return [...words.slice(Math.max(0, start), end), `costs ${moneyText(line.buy, currency)}`];
}

function lockedRows(laid: Laid, sheet: number): readonly string[] {
  const rows = [...placementOwners(laid)].flatMap(([{ index, fixed }, { table, row }]) =>
    index === sheet && fixed !== undefined ? [`${table}/${row}`] : [],
  );
  return [...new Set(rows)];
}

/** The cut layout that is wanted, as the webview draws it. */
export function cutView(wish: CutWish, snapshot: Snapshot): CutView {
  const line = chosenLine(wish, snapshot);
  if (line?.laid === undefined) {
    return nothing(
      wish,
      'Nothing is cut from whole stock yet. Boards, cloth and lengths bring it here.',
    );
  }
  const { settings, workbook } = snapshot;
  const how = { line, settings, name: rowName(workbook), cuts: wish.cuts };
  const drawings = cutDrawings(how);
  const sheet = drawings[wish.sheet] === undefined ? 0 : wish.sheet;
  const drawing = drawings[sheet];
  return {
    wish: { line: line.id, sheet, cuts: wish.cuts },
    lines: cutLines(snapshot).map(({ id, name }) => ({ value: id, label: name })),
    sheets: drawings.map((_, index) => ({
      value: String(index),
      label: `Sheet ${String(index + 1)}`,
    })),
    title: drawing?.title ?? line.name,
    message: drawing === undefined ? 'No part of this lies on any stock.' : '',
    facts: factsOf(line, snapshot),
    words: drawing?.words ?? [],
    drawing: drawing === undefined ? undefined : pictureView(drawing),
    rows: drawing === undefined ? {} : rowsOf(drawing, snapshot),
    lockable: canHold(line.laid.order.instance),
    locked: lockedRows(line.laid, sheet),
    settling: !line.laid.settled,
    about: line.laid.order.question.about,
  };
}

/** What the line would come to on each of its stocks alone, laid out at once. */
export function cutOthers(wish: CutWish, snapshot: Snapshot): readonly CutOther[] {
  const line = chosenLine(wish, snapshot);
  return line === undefined ? [] : otherStocks(line, snapshot.settings);
}
