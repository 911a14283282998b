import { moneyText } from '../engine/index.ts';

/** A difference of money with its sign: `+3.20 USD`. */
export function changeText(minor: number, currency: string): string {
  return `${minor < 0 ? '−' : '+'}${moneyText(Math.abs(minor), currency)}`;
}

/** Money, or a dash where there is none. */
export function moneyOrNothing(minor: number | undefined, currency: string): string {
  return minor === undefined ? '—' : moneyText(minor, currency);
}
