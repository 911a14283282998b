import {
  moneyChangeText,
  moneyText as exactMoneyText,
  type UnitSettings,
} from '../../engine/index.ts';

export { amountText } from '../../engine/index.ts';

/** Money of the job, such as `12.50 USD`. */
export function moneyText(minor: number, settings: UnitSettings): string {
  return exactMoneyText(minor, settings.currency);
}

/** A difference with its sign; empty when nothing changed. */
export function changeText(minor: number, settings: UnitSettings): string {
  if (minor === 0) return '';
  return moneyChangeText(minor, settings.currency);
}
