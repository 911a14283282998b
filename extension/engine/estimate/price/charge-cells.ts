import type { Book } from '../../book/book.ts';
import { failed, ok, type Result } from '../../result.ts';
import { money, plain, sameDimension } from '../../units/dimension.ts';
import type { Quantity, UnitSettings } from '../../units/quantity.ts';
import { showQuantity } from '../../units/show.ts';
import type { AnsweredRow, Answers } from '../../workbook/answers.ts';
import type { Bill, Minor } from '../bill.ts';
import { placeOf, quantityIn, wordIn } from '../cells.ts';
import { toMinor } from '../money.ts';
import { priceProblem } from './price-problems.ts';

/** What all charges of a job are worked from. */
export interface ChargeGround {
  readonly answers: Answers;
  readonly book: Book;
  readonly settings: UnitSettings;
  readonly bill: Bill;
}

/** A charge without a name of its own is called by its kind. */
export function chargeName(row: AnsweredRow, { book }: Pick<ChargeGround, 'book'>): string {
  const name = wordIn(row, 'name');
  return name === '' ? (book.kinds.get(row.kind)?.name ?? row.id) : name;
}

/** The words of a charge's `of`, in order; the one row it is `on` counts as the last of them. */
export function wordsOf(row: AnsweredRow): readonly string[] {
  const on = wordIn(row, 'on');
  const words = wordIn(row, 'of').split(',');
  return [...words, on].map((word) => word.trim()).filter((word) => word !== '');
}

/** A figure of a charge; a blank one is told as `wanted`. */
export function chargeFigure(
  row: AnsweredRow,
  column: string,
  wanted: string,
  ground: ChargeGround,
): Result<Quantity> {
  const reading = quantityIn(row, column);
  if (reading.state === 'value') return ok(reading.value);
  const charge = chargeName(row, ground);
  const more = { severity: 'warning' as const, place: placeOf(row, column) };
  if (reading.state === 'blank') {
    return failed(priceProblem('charge-blank', { charge, wanted }, more));
  }
  const { result } = row.cell(column);
  const reason = result.state === 'no-answer' ? result.problem.message : 'it is no figure.';
  return failed(priceProblem('charge-unanswered', { charge, column, reason }, more));
}

/** A share of a charge, such as 0.25 for 25 %, from 0 up to but not including `below`. */
export function chargeShare(
  row: AnsweredRow,
  ground: ChargeGround,
  below: { readonly share: number; readonly words: string },
): Result<number> {
  const found = chargeFigure(row, 'percent', 'percent', ground);
  if (!found.ok) return found;
  const { base, dimension } = found.value;
  const value = showQuantity(found.value, ground.settings, '%').text;
  const details = { charge: chargeName(row, ground), column: 'percent', value };
  const more = { place: placeOf(row, 'percent') };
  if (!sameDimension(dimension, plain)) {
    const wanted = { ...details, wanted: 'a share such as 7 %' };
    return failed(priceProblem('charge-unfitting', wanted, more));
  }
  if (base >= 0 && base < below.share) return ok(base);
  return failed(priceProblem('charge-outside', { ...details, range: below.words }, more));
}

/** A sum of money of a charge, not below nothing, in minor units. */
export function chargeSum(row: AnsweredRow, ground: ChargeGround): Result<Minor> {
  const found = chargeFigure(row, 'amount', 'amount', ground);
  if (!found.ok) return found;
  const { settings } = ground;
  const value = showQuantity(found.value, settings).text;
  const details = { charge: chargeName(row, ground), column: 'amount', value };
  const more = { place: placeOf(row, 'amount') };
  if (!sameDimension(found.value.dimension, money)) {
    const wanted = { ...details, wanted: `money, such as 50 ${settings.currency},` };
    return failed(priceProblem('charge-unfitting', wanted, more));
  }
  if (found.value.base < 0) {
    return failed(priceProblem('charge-outside', { ...details, range: 'nothing or more' }, more));
  }
  return ok(toMinor(found.value.base, settings.currency));
}

/** What a row says of tax: yes, no, or nothing. */
export function taxedIn(row: AnsweredRow): boolean | undefined {
  const { result } = row.cell('taxed');
  if (result.state !== 'value') return undefined;
  const { value } = result;
  if (value.kind === 'yes-no') return value.yes;
  return value.kind === 'text' ? value.text === 'yes' : undefined;
}
