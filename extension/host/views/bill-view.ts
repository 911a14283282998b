import {
  heldWords,
  kindGroups,
  type Bill,
  type BillLine,
  type Problem,
  type Snapshot,
  type UnitSettings,
} from '../../engine/index.ts';
import type {
  BillGroupView,
  BillLineView,
  BillView,
  HeadlineView,
  HeadlineFigure,
} from '../../protocol/views.ts';
import { cautionsView } from './cautions-view.ts';
import { checksFigure } from './check-view.ts';
import { amountText, changeText, moneyText } from './money.ts';
import { problemViews } from './problem-view.ts';
import { materialAt, worded } from './problem-words.ts';
import { groupLabel } from './sheet-view.ts';
import { packWords } from './size-words.ts';

/** The bill when the file was opened: what differences are told against. */
export type Baseline = Bill;

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
  if (line.approximate) notes.push('not laid out');
  if (line.tight !== undefined) notes.push(line.tight);
  const held = heldWords(line);
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
function incompleteNote(bill: Bill): string {
  const { incomplete } = bill.totals;
  if (incomplete === 0) return '';
  const lines = incomplete === 1 ? '1 line has' : `${String(incomplete)} lines have`;
  return `Incomplete: ${lines} no amount or no price yet`;
}

/** "Materials only, no labour yet" and what is missing from the totals. */
export function billNotes(bill: Bill): readonly string[] {
  const incomplete = incompleteNote(bill);
  const notes = ['Materials only, no labour yet'];
  return incomplete === '' ? notes : [...notes, incomplete];
}

/** The live bill, with differences since the file was opened and lines changed by the last edit. */
export function billView(
  snapshot: Snapshot,
  baseline: Baseline,
  before: Bill | undefined,
): BillView {
  const { bill, settings } = snapshot;
  const context = { snapshot, baseline: linesById(baseline), before: linesById(before) };
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
    change: changeText(bill.totals.charge - baseline.totals.charge, settings),
    note: incompleteNote(bill),
    cautions: cautionsView(snapshot),
  };
}

function figure(
  key: string,
  label: string,
  value: string,
  more: Partial<HeadlineFigure> = {},
): HeadlineFigure {
  return { key, label, value, change: '', tone: 'plain', ...more };
}

/** Panels the job makes; none while it names none, though its rows are then counted once. */
function madePanels(snapshot: Snapshot, bill: Bill): number {
  const named = snapshot.shown.tables.get('panel') ?? [];
  return named.length === 0 ? 0 : bill.totals.panels;
}

/** The headline: material money for the job and a panel, what to buy, what needs a look. */
export function headlineView(snapshot: Snapshot, baseline: Baseline): HeadlineView {
  const { bill, settings } = snapshot;
  const { charge, buy } = bill.totals;
  const panels = madePanels(snapshot, bill);
  const was = baseline.totals;
  const causes = problemViews(snapshot).filter((one) => !one.follows);
  const errors = causes.filter((one) => one.severity === 'error').length;
  const warnings = causes.filter((one) => one.severity === 'warning').length;
  const perPanel = panels > 0 ? Math.round(charge / panels) : 0;
  const wasPerPanel = was.panels > 0 ? Math.round(was.charge / was.panels) : 0;
  const checks = checksFigure(snapshot);
  const figures = [
    figure('charge', 'Materials in the price', moneyText(charge, settings), {
      change: changeText(charge - was.charge, settings),
    }),
    figure('panel', 'A panel', panels > 0 ? moneyText(perPanel, settings) : '–', {
      change: changeText(perPanel - wasPerPanel, settings),
    }),
    figure('buy', 'To buy', moneyText(buy, settings), {
      change: changeText(buy - was.buy, settings),
    }),
    figure('panels', 'Panels', panels > 0 ? String(panels) : 'none yet'),
    ...(checks === undefined ? [] : [checks]),
    figure('problems', 'Needs a look', problemCount(errors, warnings), {
      tone: errors > 0 ? 'error' : warnings > 0 ? 'warning' : 'plain',
    }),
  ];
  return {
    title: snapshot.shown.head.get('title')?.text ?? 'Untitled job',
    figures,
    notes: billNotes(bill),
  };
}

function problemCount(errors: number, warnings: number): string {
  if (errors + warnings === 0) return 'nothing';
  const parts = [];
  if (errors > 0) parts.push(`${String(errors)} to mend`);
  if (warnings > 0) parts.push(`${String(warnings)} to look at`);
  return parts.join(', ');
}
