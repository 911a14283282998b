import { describe, expect, test } from 'vitest';
import { signedText } from '../../../extension/engine/units/signed-text.ts';

describe('signedText', () => {
  test('what grows has a plus, what shrinks a minus as wide as it', () => {
    expect(signedText(75, '1 h 15 min')).toBe('+1 h 15 min');
    expect(signedText(-1250, '12.50 USD')).toBe('−12.50 USD');
  });
});
