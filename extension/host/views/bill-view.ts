import {
  boughtNotes,
  kindGroups,
  type Bill,
  type BillLine,
  type Money,
  type Problem,
  type Snapshot,
  type UnitSettings,
} from '../../engine/index.ts';
import type { BillGroupView, BillLineView, BillView } from '../../protocol/views.ts';
import { cautionsView } from './cautions-view.ts';
import { amountText, changeText, moneyText } from './money.ts';
import { materialAt, worded } from './problem-words.ts';
import { groupLabel } from './sheet-view.ts';
import { packWords } from './size-words.ts';

function boughtText(line: BillLine, settings: UnitSettings): string {
  return line.packs.map((pack) => packWords(pack, settings)).join(' + ');
}

/** What a line needs, marked ≈ while its blanks are not laid out. */
function needText(line: BillLine, settings: UnitSettings): string {
  if (line.need === undefined) return '';
  const text = amountText(line.need, settings);
  return line.approximate && !text.startsWith('≈') ? `≈ ${text}` : text;
}

function lineNote(line: BillLine): string {
  const notes = [];
  if (line.approximate) notes.push(line.laid === undefined ? 'not laid out' : 'settling');
  if (line.tight !== undefined) notes.push(line.tight);
  const held = boughtNotes(line);
  if (held !== '') notes.push(held);
  return notes.join(' · ');
}

interface LineContext {
  readonly snapshot: Snapshot;
  readonly baseline: ReadonlyMap<string, BillLine>;
  /** Lines before the last edit; those that differ are fresh. */
  readonly before: ReadonlyMap<string, BillLine>;
}

function isOther(line: BillLine, before: BillLine | undefined): boolean {
  return before?.charge !== line.charge || before.need?.base !== line.need?.base;
}

/** True for a problem that keeps a line from being whole: a row's need of it, or its own price. */
function isOfLine({ place }: Problem, { source }: BillLine, snapshot: Snapshot): boolean {
  if (place?.row === undefined) return false;
  const { table, row, column = '', occurrence = 0 } = place;
  if (source.table === table && source.id === row) return true;
  if (source.table !== 'material' || table !== 'part') return false;
  return materialAt({ table, id: row, occurrence, column }, snapshot) === source.id;
}

/** Why a line is not whole; empty when it is. */
function lineProblem(line: BillLine, snapshot: Snapshot): string {
  if (line.complete) return '';
  const problem = snapshot.bill.problems.find((one) => isOfLine(one, line, snapshot));
  if (problem === undefined) return 'Something is missing for this line.';
  return worded({ problem, place: problem.place }, snapshot).message;
}

function lineView(line: BillLine, context: LineContext): BillLineView {
  const { snapshot, baseline, before } = context;
  const { settings } = snapshot;
  return {
    id: line.id,
    name: line.name,
    need: needText(line, settings),
    buy: boughtText(line, settings),
    buyCost: moneyText(line.buy, settings),
    charge: moneyText(line.charge, settings),
    left: line.left === undefined ? '' : amountText(line.left, settings),
    note: lineNote(line),
    problem: lineProblem(line, snapshot),
    change: changeText(line.charge - (baseline.get(line.id)?.charge ?? 0), settings),
    fresh: before.size > 0 && isOther(line, before.get(line.id)),
    rows: [...new Set(line.rows.map((row) => row.row))],
  };
}

export function linesById(bill: Bill | undefined): ReadonlyMap<string, BillLine> {
  return new Map((bill?.lines ?? []).map((line) => [line.id, line]));
}

/** How many lines the totals leave out; empty when none. */
export function incompleteNote(bill: Bill): string {
  const { incomplete } = bill.totals;
  if (incomplete === 0) return '';
  const lines = incomplete === 1 ? '1 line has' : `${String(incomplete)} lines have`;
  return `Incomplete: ${lines} no amount or no price yet`;
}

/** The live bill, with differences since the file was opened and lines changed by the last edit. */
export function billView(snapshot: Snapshot, baseline: Money, before: Bill | undefined): BillView {
  const { bill, settings } = snapshot;
  const context = { snapshot, baseline: linesById(baseline.bill), before: linesById(before) };
  const groups: BillGroupView[] = kindGroups.flatMap((group) => {
    const lines = bill.lines.filter((line) => line.group === group);
    const total = bill.groups.find((one) => one.group === group);
    if (lines.length === 0) return [];
    return [
      {
        group,
        label: groupLabel(group),
        buy: moneyText(total?.buy ?? 0, settings),
        charge: moneyText(total?.charge ?? 0, settings),
        lines: lines.map((line) => lineView(line, context)),
      },
    ];
  });
  const left = bill.lines.reduce((sum, line) => sum + line.leftValue, 0);
  return {
    groups,
    buy: moneyText(bill.totals.buy, settings),
    charge: moneyText(bill.totals.charge, settings),
    left: moneyText(left, settings),
    change: changeText(bill.totals.charge - baseline.bill.totals.charge, settings),
    note: incompleteNote(bill),
    cautions: cautionsView(snapshot),
  };
}
