import { describe, expect, test } from 'vitest';
import { baseOf } from '../helpers/calculated.ts';

// Bands of the demo book's chart: East Coast Fibreglass, catalyst addition chart (5–13, 13–16, 16–20
// and 20–35 °C). The distance to a border is a definition.
describe('borders of the catalyst chart', () => {
  test.each([
    ['18degC', 2],
    ['19.5degC', 0.5],
    ['20degC', 0],
    ['27.5degC', 7.5],
    ['4degC', 1],
    ['68degF', 0],
  ])('%s is %d °C from a border', (temperature, away) => {
    expect(baseOf(`MIX.BORDER(${temperature})`)).toBeCloseTo(away, 9);
  });
});
