import type { Problem } from '../../problems.ts';
import { failed, ok, type Result } from '../../result.ts';
import { multiplied, plain, sameDimension, time, type Dimension } from '../../units/dimension.ts';
import type { Quantity, UnitSettings } from '../../units/quantity.ts';
import { comparedValues } from '../../units/same-value.ts';
import { showQuantity } from '../../units/show.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import type { Step } from '../bill.ts';
import { nameOf, placeOf, quantityIn } from '../cells.ts';
import { workProblem } from './work-problems.ts';

/** Time for the first panel most often, in min, with its working. */
export interface Likely {
  readonly minutes: number;
  readonly steps: readonly Step[];
  /** The column that a default of the kind stands behind, so that nobody has timed it here. */
  readonly defaulted: boolean;
}

/** A quantity that a cell of a task holds, `otherwise` where it is blank. */
export function figureIn(row: AnsweredRow, column: string, otherwise: Quantity): Result<Quantity> {
  const reading = quantityIn(row, column);
  if (reading.state === 'value') return ok(reading.value);
  if (reading.state === 'blank') return ok(otherwise);
  const { result } = row.cell(column);
  const reason = result.state === 'no-answer' ? result.problem.message : 'it is no figure.';
  const details = { task: nameOf(row), column, reason };
  return failed(
    workProblem('task-unanswered', details, { severity: 'warning', place: placeOf(row, column) }),
  );
}

function cellStep(row: AnsweredRow, column: string, text: string): Step {
  return { text, row: { table: row.table, id: row.id, column } };
}

function negative(row: AnsweredRow, column: string, value: string): Problem {
  const details = { task: nameOf(row), column, value };
  return workProblem('task-negative', details, { place: placeOf(row, column) });
}

/** A time in minutes, not below nothing, that a cell holds; `otherwise` where it is blank. */
export function minutesIn(
  row: AnsweredRow,
  column: string,
  of: {
    readonly otherwise: number;
    readonly settings: UnitSettings;
    readonly dimension?: Dimension;
  },
): Result<number> {
  const dimension = of.dimension ?? time;
  const found = figureIn(row, column, { base: of.otherwise, dimension });
  if (!found.ok) return found;
  const { value } = found;
  // Nothing is nothing in every dimension.
  const fits = sameDimension(value.dimension, dimension) || value.base === 0;
  if (value.base < 0 || !fits) {
    return failed(negative(row, column, showQuantity(value, of.settings).text));
  }
  return ok(value.base);
}

function typed(row: AnsweredRow, column: string): boolean {
  const cell = row.cell(column);
  return cell.text !== undefined && cell.origin === 'typed';
}

function filled(row: AnsweredRow, column: string): boolean {
  return row.cell(column).result.state !== 'blank';
}

// What was typed comes before what the kind says; a whole time before basis and rate.
function byWholeTime(row: AnsweredRow): boolean {
  if (!filled(row, 'minutes')) return false;
  return (
    typed(row, 'minutes') || !(typed(row, 'rate') || (typed(row, 'basis') && filled(row, 'rate')))
  );
}

/** Time for the first panel: the row's whole time, else basis × rate. */
export function likelyTime(row: AnsweredRow, settings: UnitSettings): Result<Likely> {
  if (byWholeTime(row)) {
    const minutes = minutesIn(row, 'minutes', { otherwise: 0, settings });
    if (!minutes.ok) return minutes;
    const text = `one takes ${showQuantity({ base: minutes.value, dimension: time }, settings).text}`;
    return ok({
      minutes: minutes.value,
      steps: [cellStep(row, 'minutes', text)],
      defaulted: !typed(row, 'minutes'),
    });
  }
  if (!filled(row, 'rate')) {
    const place = { severity: 'warning' as const, place: placeOf(row, 'minutes') };
    return failed(workProblem('task-without-time', { task: nameOf(row) }, place));
  }
  return byRate(row, settings);
}

function byRate(row: AnsweredRow, settings: UnitSettings): Result<Likely> {
  const basis = figureIn(row, 'basis', { base: 1, dimension: plain });
  if (!basis.ok) return basis;
  const rate = figureIn(row, 'rate', { base: 0, dimension: time });
  if (!rate.ok) return rate;
  const shown = {
    task: nameOf(row),
    basis: showQuantity(basis.value, settings).text,
    rate: rateText(row, rate.value, settings),
  };
  const product = multiplied(basis.value.dimension, rate.value.dimension);
  const minutes = basis.value.base * rate.value.base;
  if (!sameDimension(product, time) && minutes !== 0) {
    return failed(workProblem('task-unit-unfitting', shown, { place: placeOf(row, 'rate') }));
  }
  if (minutes < 0) {
    const column = rate.value.base < 0 ? 'rate' : 'basis';
    return failed(negative(row, column, column === 'rate' ? shown.rate : shown.basis));
  }
  const total = showQuantity({ base: minutes, dimension: time }, settings, 'min').text;
  return ok({
    minutes,
    steps: [
      cellStep(row, 'basis', `basis ${shown.basis}`),
      cellStep(row, 'rate', `× ${shown.rate} = ${total}`),
    ],
    defaulted: !typed(row, 'rate'),
  });
}

/** A rate as it is written, else in the job's units. */
function rateText(row: AnsweredRow, rate: Quantity, settings: UnitSettings): string {
  const { text, formula } = row.cell('rate');
  return text !== undefined && !formula ? text : showQuantity(rate, settings).text;
}

/** At best and at worst around the likely time; undefined where neither is given. */
export interface Range {
  readonly low: number;
  readonly high: number;
  readonly problem?: Problem;
}

/** The range of the first panel's time; one that does not rise is told and left out. */
export function rangeOf(
  row: AnsweredRow,
  likely: number,
  settings: UnitSettings,
): Result<Range | undefined> {
  if (!filled(row, 'low') && !filled(row, 'high')) return ok(undefined);
  const low = minutesIn(row, 'low', { otherwise: likely, settings });
  if (!low.ok) return low;
  const high = minutesIn(row, 'high', { otherwise: likely, settings });
  if (!high.ok) return high;
  if (comparedValues(low.value, likely) <= 0 && comparedValues(likely, high.value) <= 0) {
    return ok({ low: low.value, high: high.value });
  }
  const text = (base: number): string =>
    showQuantity({ base, dimension: time }, settings, 'min').text;
  const details = {
    task: nameOf(row),
    low: text(low.value),
    likely: text(likely),
    high: text(high.value),
  };
  const column = comparedValues(low.value, likely) > 0 ? 'low' : 'high';
  const more = { severity: 'warning' as const, place: placeOf(row, column) };
  const problem = workProblem('task-range-out-of-order', details, more);
  return ok({ low: likely, high: likely, problem });
}
