import { signedText } from '../units/signed-text.ts';
import type { Minor } from './bill.ts';

// ISO 4217: currencies whose smallest unit is not a hundredth.
const decimals = new Map([
  ...['CLP', 'ISK', 'JPY', 'KRW', 'PYG', 'UGX', 'VND', 'XAF', 'XOF', 'XPF'].map(
    (code) => [code, 0] as const,
  ),
  ...['BHD', 'IQD', 'JOD', 'KWD', 'LYD', 'OMR', 'TND'].map((code) => [code, 3] as const),
]);

/** Digits after the point in amounts of a currency: 2 for USD, 0 for JPY. */
export function minorDigits(currency: string): number {
  return decimals.get(currency) ?? 2;
}

/** Minor units in one unit of a currency: 100 for USD. */
export function minorPerUnit(currency: string): number {
  return 10 ** minorDigits(currency);
}

/** Money in base units of the currency (dollars) as whole minor units (cents), halves away from zero. */
export function toMinor(base: number, currency: string): Minor {
  return roundedMinor(base * minorPerUnit(currency));
}

/** Rounds to a whole minor unit, halves away from zero; 0.5 that fell just short still counts as half. */
export function roundedMinor(minor: number): Minor {
  return Math.sign(minor) * Math.floor(Math.abs(minor) * (1 + 1e-12) + 0.5) + 0;
}

/** A plain decimal number of the currency's units, for machines: `1234.50`. */
export function moneyNumber(minor: Minor, currency: string): string {
  return (minor / minorPerUnit(currency)).toFixed(minorDigits(currency));
}

/** Money as it is shown: `1234.50 USD`. */
export function moneyText(minor: Minor, currency: string): string {
  return `${moneyNumber(minor, currency)} ${currency}`;
}

/** A difference of money with its sign: `+3.20 USD`. */
export function moneyChangeText(minor: Minor, currency: string): string {
  return signedText(minor, moneyText(Math.abs(minor), currency));
}

/** Money, or a dash where there is none. */
export function moneyOrDash(minor: Minor | undefined, currency: string): string {
  return minor === undefined ? '—' : moneyText(minor, currency);
}

/**
 * Splits a whole amount of money by shares so that the parts are whole and add up to it: each part
 * is rounded down, then the largest remainders get one more. Shares of 0 in all give 0 to all but
 * the first.
 */
export function splitMoney(whole: Minor, shares: readonly number[]): readonly Minor[] {
  const sum = shares.reduce((total, share) => total + share, 0);
  if (sum <= 0) return shares.map((_, index) => (index === 0 ? whole : 0));
  const remainders = new Float64Array(shares.length);
  let rest = whole;
  const parts = shares.map((share, index) => {
    const exact = (whole * share) / sum;
    const part = Math.floor(exact);
    remainders[index] = exact - part;
    rest -= part;
    return part;
  });
  if (rest <= 0) return parts;
  const least = remainders.toSorted()[Math.max(0, remainders.length - rest)] ?? 0;
  // All above the least remainder that still gets one; of those equal to it, the first ones.
  const give = (index: number): void => {
    parts[index] = (parts[index] ?? 0) + 1;
    rest -= 1;
  };
  remainders.forEach((remainder, index) => {
    if (remainder > least) give(index);
  });
  remainders.forEach((remainder, index) => {
    if (remainder === least && rest > 0) give(index);
  });
  return parts;
}
