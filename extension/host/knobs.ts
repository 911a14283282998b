import type * as vscode from 'vscode';
import {
  rowKey,
  steppedText,
  type AnsweredCell,
  type AnsweredRow,
  type Check,
  type Edit,
  type Money,
  type Snapshot,
  type WhatIf,
} from '../engine/index.ts';
import type { CellAddress } from '../protocol/messages.ts';
import type { KnobView } from '../protocol/views.ts';
import { shownCell } from './views/cell-view.ts';
import { marginText } from './views/check-view.ts';
import { changeText } from './views/money.ts';
import { sheetRows } from './views/sheet-view.ts';

/** Pinned cells per file, kept for the user and never in the file. */
export interface PinStore {
  readonly get: (uri: vscode.Uri) => readonly CellAddress[] | undefined;
  readonly set: (uri: vscode.Uri, cells: readonly CellAddress[]) => Promise<void>;
}

/** Knobs offered until the user pins cells of their own. */
const suggestedKnobs = 6;

function suggested(snapshot: Snapshot): readonly CellAddress[] {
  const cells = sheetRows('part', snapshot).flatMap((row) =>
    (snapshot.book.kinds.get(row.kind)?.knobs ?? []).map((column) => ({
      table: 'part',
      id: row.id,
      occurrence: row.occurrence,
      column,
    })),
  );
  return cells.slice(0, suggestedKnobs);
}

export function knobPlaces(
  pins: PinStore,
  uri: vscode.Uri,
  snapshot: Snapshot,
): readonly CellAddress[] {
  return pins.get(uri) ?? suggested(snapshot);
}

function find(place: CellAddress, snapshot: Snapshot): AnsweredRow | undefined {
  return snapshot.workbook
    .rows(place.table)
    .find((row) => row.id === place.id && row.occurrence === place.occurrence);
}

function columnLabel(row: AnsweredRow, column: string, snapshot: Snapshot): string {
  const label = snapshot.book.kinds.get(row.kind)?.labels.get(column);
  return (label ?? column.replaceAll('_', ' ')).toLowerCase();
}

function stepEdit(
  place: CellAddress,
  cell: AnsweredCell,
  by: -1 | 1,
  snapshot: Snapshot,
): Edit | undefined {
  const text = steppedText(cell, by, snapshot.settings);
  if (text === undefined) return undefined;
  return { kind: 'set-cell', row: place, column: place.column, text };
}

/** Text a knob's cell gets one step on; undefined where it cannot be stepped. */
export function knobStepText(
  place: CellAddress,
  by: -1 | 1,
  snapshot: Snapshot,
): string | undefined {
  const cell = find(place, snapshot)?.cell(place.column);
  return cell === undefined ? undefined : steppedText(cell, by, snapshot.settings);
}

type TryOut = (edits: readonly Edit[]) => WhatIf | undefined;

/** What a step does: to the money, and to the check that it brings closest to failing. */
interface Effect {
  readonly money: string;
  readonly check: string;
}

const noEffect: Effect = { money: '', check: '' };

const worst = ['fail', 'near', 'decide', 'pass', 'no-answer'] as const;

/** The check that a step moves and that stands worst then; of equals, the one with the least room. */
function movedCheck(before: readonly Check[], then: readonly Check[]): Check | undefined {
  const was = new Map(before.map((check) => [`${check.id}#${String(check.occurrence)}`, check]));
  const share = ({ margin, value }: Check): number =>
    (margin?.base ?? Infinity) / Math.max(1e-9, Math.abs(value?.base ?? 1));
  return then
    .filter((check) => {
      const old = was.get(`${check.id}#${String(check.occurrence)}`);
      return old?.margin !== undefined && old.margin.base !== check.margin?.base;
    })
    .sort(
      (one, two) =>
        worst.indexOf(one.outcome) - worst.indexOf(two.outcome) || share(one) - share(two),
    )[0];
}

function checkText(check: Check | undefined, snapshot: Snapshot): string {
  if (check?.margin === undefined) return '';
  const { name, outcome } = check;
  if (outcome === 'fail') return `${name}: fails`;
  return `${name}: ${marginText(check, snapshot)} to spare`;
}

function effectOf(
  place: CellAddress,
  cell: AnsweredCell,
  snapshot: Snapshot,
  whatIf: TryOut,
): Effect {
  const edit = stepEdit(place, cell, 1, snapshot);
  const then = edit === undefined ? undefined : whatIf([edit]);
  if (then === undefined) return noEffect;
  const money = (of: Money): number =>
    of.price.state === 'materials-only' ? of.bill.totals.charge : of.price.totals.price;
  const change = money(then) - money(snapshot);
  return {
    money: change === 0 ? 'no change in money' : changeText(change, snapshot.settings),
    check: checkText(movedCheck(snapshot.checks, then.checks), snapshot),
  };
}

/**
 * The knob strip. Without `whatIf` the effects stay as they were shown last: they take a calculation
 * each and follow after the grid has painted.
 */
export function knobViews(
  places: readonly CellAddress[],
  snapshot: Snapshot,
  before: readonly KnobView[],
  whatIf?: TryOut,
): readonly KnobView[] {
  return places.flatMap((place) => {
    const row = find(place, snapshot);
    if (row === undefined) return [];
    const cell = row.cell(place.column);
    const old = before.find((one) => rowKey(one) === rowKey(row) && one.column === place.column);
    const next = steppedText(cell, 1, snapshot.settings);
    const name = row.cell('name').text ?? row.id;
    const effect =
      whatIf === undefined || next === undefined
        ? { money: old?.effect ?? '', check: old?.check ?? '' }
        : effectOf(place, cell, snapshot, whatIf);
    return [
      {
        table: place.table,
        id: place.id,
        column: place.column,
        label: `${name}: ${columnLabel(row, place.column, snapshot)}`,
        value: shownCell(cell, snapshot.settings),
        step: next ?? '',
        effect: effect.money,
        check: effect.check,
      },
    ];
  });
}
