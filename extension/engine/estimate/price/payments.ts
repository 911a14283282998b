import type { Problem } from '../../problems.ts';
import { ok, type Result } from '../../result.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import type { Minor } from '../bill.ts';
import { placeOf } from '../cells.ts';
import { moneyText, splitMoney } from '../money.ts';
import { chargeShare, chargeSum, type ChargeGround } from './charge-cells.ts';
import { priceProblem } from './price-problems.ts';

/** What is due when: deposit and stages, and the rest at the end; together they are the total. */
export interface Payments {
  readonly due: ReadonlyMap<AnsweredRow, Result<Minor>>;
  readonly balance: Minor;
  readonly problems: readonly Problem[];
}

type Asked =
  | { readonly kind: 'sum'; readonly sum: Minor }
  | { readonly kind: 'share'; readonly share: number };

function askedBy(row: AnsweredRow, ground: ChargeGround): Result<Asked> {
  if (row.cell('amount').result.state !== 'blank') {
    const sum = chargeSum(row, ground);
    return sum.ok ? ok({ kind: 'sum', sum: sum.value }) : sum;
  }
  const share = chargeShare(row, ground, { share: 1.0001, words: 'from 0 to 100 %' });
  return share.ok ? ok({ kind: 'share', share: share.value }) : share;
}

/**
 * Splits the total into what its rows ask for and the balance, in whole minor units that add up: shares
 * are of the total, and the largest remainders get the odd cent.
 */
export function paymentsOf(
  rows: readonly AnsweredRow[],
  total: Minor,
  ground: ChargeGround,
): Payments {
  const asked = rows.map((row) => ({ row, asked: askedBy(row, ground) }));
  const shares = asked.map(({ asked: one }) =>
    one.ok && one.value.kind === 'share' ? one.value.share : 0,
  );
  const rest = Math.max(0, 1 - shares.reduce((sum, share) => sum + share, 0));
  const split = splitMoney(total, [...shares, rest]);
  const due = new Map<AnsweredRow, Result<Minor>>();
  let balance = total;
  asked.forEach(({ row, asked: one }, index) => {
    if (!one.ok) {
      due.set(row, one);
      return;
    }
    const amount = one.value.kind === 'sum' ? one.value.sum : (split[index] ?? 0);
    balance -= amount;
    due.set(row, ok(amount));
  });
  if (balance >= 0 || rows[0] === undefined) return { due, balance, problems: [] };
  const text = (minor: Minor): string => moneyText(minor, ground.settings.currency);
  const details = { sum: text(total - balance), total: text(total) };
  const more = { severity: 'warning' as const, place: placeOf(rows[0], 'percent') };
  return { due, balance, problems: [priceProblem('payments-over', details, more)] };
}
