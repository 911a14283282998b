import { minorDigits, money, showQuantity, type Amount, type UnitSettings } from '../../engine/index.ts';

/** Money of the job, such as `12.50 USD`. */
export function moneyText(minor: number, settings: UnitSettings): string {
  const base = minor / 10 ** minorDigits(settings.currency);
  return showQuantity({ base, dimension: money }, settings).text;
}

/** A difference with its sign; empty when nothing changed. */
export function changeText(minor: number, settings: UnitSettings): string {
  if (minor === 0) return '';
  return `${minor > 0 ? '+' : '−'}${moneyText(Math.abs(minor), settings)}`;
}

/** An amount in the unit it is counted or measured in. */
export function amountText(amount: Amount, settings: UnitSettings): string {
  if (!amount.count) return showQuantity(amount, settings, amount.unit === '' ? undefined : amount.unit).text;
  const number = showQuantity(amount, settings).text;
  return amount.unit === '' ? number : `${number} ${amount.unit}`;
}
