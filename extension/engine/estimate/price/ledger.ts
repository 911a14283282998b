import type { Problem } from '../../problems.ts';
import { time } from '../../units/dimension.ts';
import { showQuantity } from '../../units/show.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { placeOf } from '../cells.ts';
import { moneyText } from '../money.ts';
import type { Ledger } from './base.ts';
import { chargeName, taxedIn, type ChargeGround } from './charge-cells.ts';
import { chargeAmount, operationOf, type Amount, type WorkedCharge } from './charge-row.ts';
import type { Labour, LabourCharge } from './labour.ts';
import { paymentsOf, type Payments } from './payments.ts';
import { priceProblem } from './price-problems.ts';
import type { Charge, MaterialsBy, Operation } from './price.ts';
import type { Slice } from './slices.ts';

/** What the charges make of materials and work. */
export interface Applied {
  readonly charges: readonly WorkedCharge[];
  readonly slices: readonly Slice[];
  readonly payments: Payments;
  readonly total: number;
}

export interface Applying extends ChargeGround {
  readonly by: MaterialsBy;
  readonly rows: readonly AnsweredRow[];
  readonly materials: readonly Slice[];
  readonly labour: Labour;
  /** Somebody reads how its charges come about. */
  readonly told: boolean;
}

function isPayment(operation: Operation): boolean {
  return operation === 'deposit' || operation === 'stage';
}

function base(row: AnsweredRow, operation: Operation, ground: ChargeGround): Charge {
  return {
    id: row.id,
    occurrence: row.occurrence,
    name: chargeName(row, ground),
    kind: row.kind,
    operation,
    amount: 0,
    taxed: 0,
    steps: [],
    complete: false,
  };
}

function labourAmount(row: AnsweredRow, labour: LabourCharge, ground: ChargeGround): Amount {
  const { amount, minutes, rateText, problems } = labour;
  const { settings } = ground;
  const hours = showQuantity({ base: minutes, dimension: time }, settings, 'h').text;
  const text = `${hours} × ${rateText} = ${moneyText(amount, settings.currency)}`;
  const at = { table: 'charge', id: row.id, column: 'rate' };
  const taxed = taxedIn(row) === true ? amount : 0;
  return { amount, taxed, steps: rateText === '' ? [] : [{ text, row: at }], problems };
}

function slicesOf({ charge }: WorkedCharge): readonly Slice[] {
  if (!charge.complete || charge.amount === 0) return [];
  const of =
    charge.operation === 'labour' ? 'labour' : charge.operation === 'tax' ? 'tax' : 'charge';
  const { id, amount, taxed } = charge;
  return [{ of, charge: id, amount, taxed, markedUp: of === 'charge' }];
}

function apply(
  row: AnsweredRow,
  operation: Operation,
  applying: Applying,
  slices: readonly Slice[],
): WorkedCharge {
  const { labour, answers, book, settings, bill, by, told } = applying;
  const empty = base(row, operation, applying);
  if (operation === 'labour') {
    const own = labour.charges.get(row);
    if (own === undefined) return { charge: empty, problems: [] };
    const { problems, ...figures } = labourAmount(row, own, applying);
    return { charge: { ...empty, ...figures, complete: own.complete }, problems };
  }
  if (row.kind === '' || book.kinds.get(row.kind)?.table !== 'charge') {
    const more = { severity: 'warning' as const, place: placeOf(row, 'kind') };
    const problem = priceProblem('charge-kind-missing', { charge: empty.name }, more);
    return { charge: empty, problems: [problem] };
  }
  const ledger: Ledger = { answers, book, settings, bill, by, slices, labour, told };
  const found = chargeAmount(row, operation, ledger);
  if (!found.ok) return { charge: empty, problems: [found.problem] };
  const { problems, ...figures } = found.value;
  return { charge: { ...empty, ...figures, complete: true }, problems };
}

function sum(slices: readonly Slice[]): number {
  return slices.reduce((total, { amount }) => total + amount, 0);
}

/** Applies the charges from top to bottom to materials and work; deposit and stages come last. */
export function applyCharges(applying: Applying): Applied {
  let slices = applying.materials;
  const worked = new Map<AnsweredRow, WorkedCharge>();
  for (const row of applying.rows) {
    const operation = operationOf(row);
    if (isPayment(operation)) continue;
    const one = apply(row, operation, applying, slices);
    worked.set(row, one);
    slices = [...slices, ...slicesOf(one)];
  }
  const total = sum(slices);
  const paid = applying.rows.filter((row) => isPayment(operationOf(row)));
  const payments = paymentsOf(paid, total, applying);
  const charges = applying.rows.map(
    (row) => worked.get(row) ?? payment(row, payments, total, applying),
  );
  return { charges, slices, payments, total };
}

function payment(
  row: AnsweredRow,
  payments: Payments,
  total: number,
  applying: Applying,
): WorkedCharge {
  const empty = base(row, operationOf(row), applying);
  const due = payments.due.get(row);
  const problems: readonly Problem[] = due?.ok === false ? [due.problem] : [];
  if (due?.ok !== true) return { charge: empty, problems };
  const { currency } = applying.settings;
  const text = `${moneyText(due.value, currency)} of the total of ${moneyText(total, currency)}`;
  const steps = [{ text, row: { table: 'charge', id: row.id, column: 'percent' } }];
  return { charge: { ...empty, amount: due.value, base: total, steps, complete: true }, problems };
}
