/** Where float noise must not tip a half: one part in 10¹² towards away from zero. */
const nudge = 1 + 1e-12;

/** A number with at most this many decimals, without trailing zeros and without an exponent. */
export function withDecimals(x: number, decimals: number): string {
  const places = Math.min(Math.max(decimals, 0), 15);
  if (Math.abs(x) >= 1e15) return String(BigInt(Math.round(x)));
  const text = (x * nudge).toFixed(places);
  const trimmed = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return trimmed === '-0' ? '0' : trimmed;
}

/**
 * A number to this many significant digits, without trailing zeros. Digits before the point are
 * never rounded away.
 */
export function withDigits(x: number, digits: number): string {
  if (x === 0) return '0';
  return withDecimals(x, digits - 1 - Math.floor(Math.log10(Math.abs(x)) + 1e-12));
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}

/** A count of parts as a mixed fraction: 27 sixteenths is `1 11/16`. */
export function mixedFraction(parts: number, denominator: number): string {
  const size = Math.abs(parts);
  const whole = Math.floor(size / denominator);
  const rest = size % denominator;
  const divisor = commonDivisor(rest, denominator);
  const fraction = rest === 0 ? '' : `${String(rest / divisor)}/${String(denominator / divisor)}`;
  const text = whole === 0 && fraction !== '' ? fraction : `${String(whole)} ${fraction}`.trim();
  return parts < 0 ? `-${text}` : text;
}
