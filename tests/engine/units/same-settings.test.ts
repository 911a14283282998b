import { describe, expect, test } from 'vitest';
import { sameSettings } from '../../../extension/engine/units/same-settings.ts';

const inches = { units: 'in', currency: 'USD' } as const;

describe('sameSettings', () => {
  test('units, currency and the finest fraction all count', () => {
    expect(sameSettings(inches, { ...inches })).toBe(true);
    expect(sameSettings(inches, { ...inches, units: 'mm' })).toBe(false);
    expect(sameSettings(inches, { ...inches, currency: 'EUR' })).toBe(false);
    expect(sameSettings(inches, { ...inches, fraction: 32 })).toBe(false);
  });
});
