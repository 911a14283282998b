import type { UnitSettings } from './quantity.ts';

/** True where both read and show quantities in the same way. */
export function sameSettings(one: UnitSettings, other: UnitSettings): boolean {
  return (
    one.units === other.units && one.currency === other.currency && one.fraction === other.fraction
  );
}
