import {
  minutesText,
  moneyChangeText,
  moneyOrDash,
  moneyText,
  signedText,
  type ComparedCell,
  type ComparedJobs,
  type ComparedRow,
  type UnitSettings,
} from '../../engine/index.ts';
import type { CompareChange, CompareView } from '../../protocol/compare-view.ts';
import { labelText } from './column-plan.ts';

interface Context {
  readonly found: ComparedJobs;
  readonly settings: UnitSettings;
}

function ownText(own: number | undefined, { found }: Context): string {
  return own === undefined || own === 0
    ? ''
    : `alone ${moneyChangeText(own, found.currencies.before)} before tax`;
}

/** What a change did to one row: amount, time, money. */
function rowEffect({ before, after }: ComparedRow, { found, settings }: Context): string {
  const { currencies } = found;
  const time = (minutes: number | undefined): string => minutesText(minutes ?? 0, settings);
  return [
    before.need === after.need ? '' : `need ${before.need ?? '—'} → ${after.need ?? '—'}`,
    before.minutes === after.minutes ? '' : `time ${time(before.minutes)} → ${time(after.minutes)}`,
    before.charge === after.charge
      ? ''
      : `charge ${moneyOrDash(before.charge, currencies.before)} → ${moneyOrDash(after.charge, currencies.after)}`,
  ]
    .filter((part) => part !== '')
    .join('; ');
}

function wasText(cell: ComparedCell): string {
  return cell.before === undefined ? 'was blank' : `was ${cell.shownBefore}`;
}

function both(...texts: readonly string[]): string {
  return texts.filter((text) => text !== '').join('; ');
}

function cellChange(row: ComparedRow, cell: ComparedCell, context: Context): CompareChange {
  const { table, id, occurrence, name } = row;
  return {
    kind: cell.kind,
    table,
    id,
    occurrence,
    column: cell.column,
    there: true,
    place: `${name}: ${cell.label}`,
    before: cell.shownBefore,
    after: cell.shownAfter,
    effect: ownText(cell.own, context),
    told: wasText(cell),
  };
}

/** What is said of a row as a whole; undefined where only its cells differ. */
function wholeRow(row: ComparedRow, context: Context): CompareChange | undefined {
  const { table, id, occurrence, name, kind, formerId, moved } = row;
  const words = {
    added: 'new row',
    removed: 'row taken out',
    kept: both(formerId === undefined ? '' : `was ${formerId}`, moved ? 'moved' : ''),
  }[kind];
  if (words === '') return undefined;
  return {
    kind: kind === 'kept' ? 'moved' : kind,
    table,
    id,
    occurrence,
    column: '',
    there: kind !== 'removed',
    place: name,
    before: '',
    after: words,
    effect: both(ownText(row.own, context), kind === 'kept' ? '' : rowEffect(row, context)),
    told: words,
  };
}

function rowChanges(row: ComparedRow, context: Context): readonly CompareChange[] {
  const whole = wholeRow(row, context);
  if (row.kind !== 'kept') return whole === undefined ? [] : [whole];
  const cells = row.cells.map((cell) => cellChange(row, cell, context));
  const effect = rowEffect(row, context);
  const [first, ...rest] = [...(whole === undefined ? [] : [whole]), ...cells];
  return first === undefined ? [] : [{ ...first, effect: both(first.effect, effect) }, ...rest];
}

function settingChange(cell: ComparedCell, context: Context): CompareChange {
  return {
    kind: cell.kind,
    table: 'job',
    id: cell.column,
    occurrence: 0,
    column: 'value',
    there: true,
    place: labelText(cell.label),
    before: cell.shownBefore,
    after: cell.shownAfter,
    effect: ownText(cell.own, context),
    told: wasText(cell),
  };
}

function figures({ found, settings }: Context): CompareView['figures'] {
  const { before: old, after: now } = found.currencies;
  return found.figures.map(({ label, measure, before, after }) => {
    const moved = after - before;
    if (measure === 'time') {
      const change = moved === 0 ? '' : signedText(moved, minutesText(Math.abs(moved), settings));
      return {
        label,
        before: minutesText(before, settings),
        after: minutesText(after, settings),
        change,
      };
    }
    return {
      label,
      before: moneyText(before, old),
      after: moneyText(after, now),
      change: moved === 0 || old !== now ? '' : moneyChangeText(moved, now),
    };
  });
}

/** A comparison as the grid marks it and the pane lists it. */
export function compareView(
  found: ComparedJobs,
  told: { readonly against: string; readonly note: string },
  settings: UnitSettings,
): CompareView {
  const context = { found, settings };
  return {
    ...told,
    figures: figures(context),
    changes: [
      ...found.settings.map((cell) => settingChange(cell, context)),
      ...found.rows.flatMap((row) => rowChanges(row, context)),
    ],
    followers: found.followers.map((row) => `${row.name}: ${rowEffect(row, context)}`),
  };
}
