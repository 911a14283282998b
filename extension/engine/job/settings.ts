import { isCurrencyCode } from '../units/unit-words.ts';
import type { UnitSettings } from '../units/quantity.ts';
import type { SourceCell } from './source.ts';

/** Units and currency that a file's head asks for; inches and USD where it does not say. */
export function settingsOf(head: ReadonlyMap<string, SourceCell>): UnitSettings {
  const units = head.get('units')?.text === 'mm' ? 'mm' : 'in';
  const currency = head.get('currency')?.text ?? '';
  const known = isCurrencyCode(currency) ? currency : 'USD';
  return head.get('fraction')?.text === '32'
    ? { units, currency: known, fraction: 32 }
    : { units, currency: known };
}
