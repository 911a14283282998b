import { describe, expect, test } from 'vitest';
import { minutesText } from '../../../extension/engine/units/minutes-text.ts';

describe('minutesText', () => {
  test.each([
    [0, '0 min'],
    [45, '45 min'],
    [60, '1 h'],
    [1615, '26 h 55 min'],
  ])('%d minutes are %s', (minutes, text) => {
    expect(minutesText(minutes, { units: 'in', currency: 'USD' })).toBe(text);
  });
});
