import {
  fileForm,
  minutesText,
  signedText,
  type Bill,
  type Money,
  type Snapshot,
} from '../../engine/index.ts';
import type { HeadlineFigure, HeadlineView } from '../../protocol/views.ts';
import { incompleteNote } from './bill-view.ts';
import { checksFigure } from './check-view.ts';
import { changeText, moneyText } from './money.ts';
import { priceNote, shareText } from './price-view.ts';
import { problemViews } from './problem-view.ts';

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

function each(total: number, panels: number): number {
  return panels > 0 ? Math.round(total / panels) : 0;
}

function priceFigures(snapshot: Snapshot, was: Money): readonly HeadlineFigure[] {
  const { price, work, bill, settings } = snapshot;
  const money = (key: string, label: string, now: number, then: number): HeadlineFigure =>
    figure(key, label, moneyText(now, settings), { change: changeText(now - then, settings) });
  const panels = madePanels(snapshot, bill);
  const { totals } = price;
  const before = was.price.totals;
  const perPanel = each(totals.price, panels);
  const label = totals.tax === 0 ? 'Price' : 'Price before tax';
  const minutes = work.totals.working;
  const moved = Math.round(minutes - was.work.totals.working);
  const hours = figure(
    'hours',
    'Hours',
    work.tasks.length === 0 ? '–' : `${(minutes / 60).toFixed(1)} h`,
    {
      change: moved === 0 ? '' : signedText(moved, minutesText(Math.abs(moved), settings)),
    },
  );
  const margin = figure('margin', 'Margin', shareText(totals.margin), {
    tone: totals.earned < 0 ? 'warning' : 'plain',
  });
  return [
    ...(price.state === 'materials-only'
      ? []
      : [money('price', label, totals.price, before.price)]),
    ...(panels > 0
      ? [money('panel', 'A panel', perPanel, each(before.price, was.bill.totals.panels))]
      : [figure('panel', 'A panel', '–')]),
    hours,
    money('charge', 'Materials in the price', bill.totals.charge, was.bill.totals.charge),
    ...(price.state === 'materials-only' ? [] : [margin]),
    money('buy', 'To buy', bill.totals.buy, was.bill.totals.buy),
  ];
}

function problemFigure(snapshot: Snapshot): HeadlineFigure {
  const causes = problemViews(snapshot).filter((one) => !one.follows);
  const errors = causes.filter((one) => one.severity === 'error').length;
  const warnings = causes.filter((one) => one.severity === 'warning').length;
  return figure('problems', 'Needs a look', problemCount(errors, warnings), {
    tone: errors > 0 ? 'error' : warnings > 0 ? 'warning' : 'plain',
  });
}

function problemCount(errors: number, warnings: number): string {
  if (errors + warnings === 0) return 'nothing';
  const parts = [];
  if (errors > 0) parts.push(`${String(errors)} to mend`);
  if (warnings > 0) parts.push(`${String(warnings)} to look at`);
  return parts.join(', ');
}

function rateNote({ work }: Snapshot): string {
  const { uncalibrated } = work.totals;
  if (uncalibrated === 0) return '';
  const rates = uncalibrated === 1 ? '1 rate' : `${String(uncalibrated)} rates`;
  return `${rates} of work not timed by this shop`;
}

function settlingNote({ heavy }: Snapshot): string {
  if (heavy.length === 0) return '';
  return heavy.length === 1
    ? 'settling: 1 figure still ≈'
    : `settling: ${String(heavy.length)} figures still ≈`;
}

/** What the figures leave out, or rest on. */
export function headlineNotes(snapshot: Snapshot): readonly string[] {
  const notes = [
    settlingNote(snapshot),
    priceNote(snapshot),
    incompleteNote(snapshot.bill),
    rateNote(snapshot),
  ];
  return notes.filter((note) => note !== '');
}

/** What stands in the figures of the program, and where only the shop can say how it is. */
function toCalibrate({ book }: Snapshot): number {
  return [...book.constants.values()].filter(
    ({ origin, cells }) =>
      origin === 'built-in' && (cells.get('source') ?? '').startsWith('shop must calibrate'),
  ).length;
}

function bookNotes(snapshot: Snapshot): readonly string[] {
  const open = toCalibrate(snapshot);
  return open === 0
    ? []
    : [`${String(open)} constants are usual figures that this shop has not measured`];
}

function titleOf({ shown }: Snapshot): string {
  const untitled = fileForm(shown) === 'book' ? 'Shop book' : 'Untitled job';
  return shown.head.get('title')?.text ?? untitled;
}

/** How much stands in a shop book. */
function bookFigures({ shown: { tables, head } }: Snapshot): readonly HeadlineFigure[] {
  const count = (table: string): string => String((tables.get(table) ?? []).length);
  const day = head.get('date')?.text ?? '';
  return [
    figure('materials', 'Materials', count('material')),
    figure('packs', 'Packs', count('pack')),
    figure('day', 'Prices of', day === '' ? 'no day' : day),
  ];
}

/** The part of the headline that is told first: what the job comes to, without what needs a look. */
export function headlineTotals(snapshot: Snapshot, baseline: Money): HeadlineView {
  const isBook = fileForm(snapshot.shown) === 'book';
  return {
    title: titleOf(snapshot),
    figures: isBook ? bookFigures(snapshot) : priceFigures(snapshot, baseline),
    notes: isBook ? bookNotes(snapshot) : headlineNotes(snapshot),
  };
}

/**
 * The headline: price of the job and a panel, hours, material money, margin, what needs a look; of a
 * shop book, how much stands in it.
 */
export function headlineView(snapshot: Snapshot, baseline: Money): HeadlineView {
  const totals = headlineTotals(snapshot, baseline);
  const checks = fileForm(snapshot.shown) === 'book' ? undefined : checksFigure(snapshot);
  return {
    ...totals,
    figures: [
      ...totals.figures,
      ...(checks === undefined ? [] : [checks]),
      problemFigure(snapshot),
    ],
  };
}
