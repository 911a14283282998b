import type { Problem } from '../../problems.ts';
import { failed, ok, type Result } from '../../result.ts';
import { percentText } from '../../units/percent-text.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import type { Minor, Step } from '../bill.ts';
import { placeOf } from '../cells.ts';
import { moneyText, roundedMinor } from '../money.ts';
import { baseOf, type Base, type Ledger } from './base.ts';
import { chargeName, chargeShare, chargeSum, taxedIn } from './charge-cells.ts';
import { priceProblem } from './price-problems.ts';
import type { Charge, Operation } from './price.ts';

/** A charge with what a person has to be told of it. */
export interface WorkedCharge {
  readonly charge: Charge;
  readonly problems: readonly Problem[];
}

const operations: ReadonlyMap<string, Operation> = new Map([
  ['labour', 'labour'],
  ['margin', 'margin'],
  ['fee', 'sum'],
  ['discount', 'discount'],
  ['minimum', 'minimum'],
  ['rounding', 'rounding'],
  ['tax', 'tax'],
  ['deposit', 'deposit'],
  ['stage', 'stage'],
]);

/** What a row does with the price: kinds of a shop's own are a sum where they have an amount, else a share. */
export function operationOf(row: AnsweredRow): Operation {
  const known = operations.get(row.kind);
  if (known !== undefined) return known;
  return row.cell('amount').result.state === 'value' ? 'sum' : 'share';
}

export interface Amount {
  readonly amount: Minor;
  readonly taxed: Minor;
  readonly base?: Minor;
  readonly steps: readonly Step[];
  readonly problems: readonly Problem[];
}

/** The working of a charge, in words made only where they are told. */
function stepAt(
  row: AnsweredRow,
  column: string,
  { told, settings }: Ledger,
  words: (money: (minor: Minor) => string) => string,
): readonly Step[] {
  if (!told) return [];
  const text = words((minor) => moneyText(minor, settings.currency));
  return [{ text, row: { table: 'charge', id: row.id, column } }];
}

/** Tax goes on a charge as on what it is of, unless its row says otherwise. */
function taxedPart(row: AnsweredRow, amount: Minor, base: Base): Minor {
  const said = taxedIn(row);
  if (said !== undefined) return said ? amount : 0;
  return base.amount === 0 ? 0 : roundedMinor((amount * base.taxed) / base.amount);
}

function shareOf(row: AnsweredRow, ledger: Ledger): Result<Amount> {
  const share = chargeShare(row, ledger, { share: 10.0001, words: 'from 0 to 1000 %' });
  if (!share.ok) return share;
  const base = baseOf(row, ledger, { markedUp: row.kind === 'markup' });
  const amount = roundedMinor(base.amount * share.value);
  return ok(shareAmount(row, { amount, share: share.value, base }, ledger));
}

function shareAmount(
  row: AnsweredRow,
  worked: { readonly amount: Minor; readonly share: number; readonly base: Base },
  ledger: Ledger,
): Amount {
  const { amount, share, base } = worked;
  return {
    amount,
    taxed: taxedPart(row, amount, base),
    base: base.amount,
    steps: stepAt(row, 'percent', ledger, (money) => {
      return `${percentText(share, 4)} of ${money(base.amount)} = ${money(amount)}`;
    }),
    problems: base.problems,
  };
}

// Both a markup and a margin on one base pay the shop twice, usually without meaning to.
function doubled(row: AnsweredRow, base: Base, ledger: Ledger): readonly Problem[] {
  const marked = ledger.answers
    .rows('charge')
    .find(({ id, kind }) => kind === 'markup' && base.charges.has(id));
  if (marked === undefined) return [];
  const details = { charge: chargeName(row, ledger), other: chargeName(marked, ledger) };
  const more = { severity: 'warning' as const, place: placeOf(row, 'of') };
  return [priceProblem('markup-and-margin', details, more)];
}

function marginOf(row: AnsweredRow, ledger: Ledger): Result<Amount> {
  const share = chargeShare(row, ledger, { share: 0.95, words: 'below 95 %' });
  if (!share.ok) return share;
  const base = baseOf(row, ledger, { markedUp: false });
  const price = roundedMinor(base.amount / (1 - share.value));
  const amount = price - base.amount;
  return ok({
    amount,
    taxed: taxedPart(row, amount, base),
    base: base.amount,
    steps: stepAt(row, 'percent', ledger, (money) => {
      return `${money(base.amount)} ÷ (1 − ${percentText(share.value, 4)}) = ${money(price)}`;
    }),
    problems: [...base.problems, ...doubled(row, base, ledger)],
  });
}

function sumOf(row: AnsweredRow, ledger: Ledger): Result<Amount> {
  const sum = chargeSum(row, ledger);
  if (!sum.ok) return sum;
  const taxed = taxedIn(row) === true ? sum.value : 0;
  return ok({ amount: sum.value, taxed, steps: [], problems: [] });
}

function discountOf(row: AnsweredRow, ledger: Ledger): Result<Amount> {
  const bySum = row.cell('amount').result.state !== 'blank';
  const base = baseOf(row, ledger, { markedUp: false });
  if (bySum) {
    const sum = chargeSum(row, ledger);
    if (!sum.ok) return sum;
    const amount = 0 - sum.value;
    return ok({ amount, taxed: taxedPart(row, amount, base), steps: [], problems: base.problems });
  }
  const share = chargeShare(row, ledger, { share: 1.0001, words: 'from 0 to 100 %' });
  if (!share.ok) return share;
  const amount = 0 - roundedMinor(base.amount * share.value);
  return ok(shareAmount(row, { amount, share: share.value, base }, ledger));
}

/** All so far but tax, or with it. */
function soFar({ slices }: Ledger, withTax: boolean): Base {
  const counted = slices.filter(({ of }) => withTax || of !== 'tax');
  return {
    amount: counted.reduce((sum, { amount }) => sum + amount, 0),
    taxed: counted.reduce((sum, { taxed }) => sum + taxed, 0),
    charges: new Set(),
    problems: [],
  };
}

function liftOf(row: AnsweredRow, ledger: Ledger): Result<Amount> {
  const sum = chargeSum(row, ledger);
  if (!sum.ok) return sum;
  const taxedAlready = ledger.slices.some(({ of }) => of === 'tax');
  const rounds = row.kind === 'rounding';
  const base = soFar(ledger, rounds && taxedAlready);
  const step = sum.value;
  const wanted = rounds ? (step === 0 ? base.amount : Math.ceil(base.amount / step) * step) : step;
  const amount = Math.max(0, wanted - base.amount);
  const taxed = taxedAlready ? 0 : taxedPart(row, amount, base);
  const steps = stepAt(row, 'amount', ledger, (money) => {
    const words = rounds ? `up to a whole ${money(step)}` : `${money(step)} at least`;
    return `${money(base.amount)}, ${words}`;
  });
  return ok({ amount, taxed, base: base.amount, steps, problems: [] });
}

function taxOf(row: AnsweredRow, ledger: Ledger): Result<Amount> {
  const share = chargeShare(row, ledger, { share: 1.0001, words: 'from 0 to 100 %' });
  if (!share.ok) return share;
  const { taxed } = soFar(ledger, false);
  const base = { amount: taxed, taxed: 0, charges: new Set<string>(), problems: [] };
  const amount = roundedMinor(taxed * share.value);
  return ok({ ...shareAmount(row, { amount, share: share.value, base }, ledger), taxed: 0 });
}

/** What a charge adds to the ledger so far; labour and payments are worked out elsewhere. */
export function chargeAmount(
  row: AnsweredRow,
  operation: Operation,
  ledger: Ledger,
): Result<Amount> {
  switch (operation) {
    case 'share':
      return shareOf(row, ledger);
    case 'margin':
      return marginOf(row, ledger);
    case 'sum':
      return sumOf(row, ledger);
    case 'discount':
      return discountOf(row, ledger);
    case 'minimum':
    case 'rounding':
      return liftOf(row, ledger);
    case 'tax':
      return taxOf(row, ledger);
    case 'labour':
    case 'deposit':
    case 'stage':
      return failed(priceProblem('charge-blank', { charge: row.id, wanted: 'amount of its own' }));
  }
}
