import { describe, expect, test } from 'vitest';
import { partOpening } from '../../../extension/engine/workbook/part-opening.ts';
import { fakeAnswers } from '../../helpers/fake-answers.ts';

const answers = fakeAnswers({
  driver: [{ id: 'woofer', frame: '7 in', cutout: '5 1/2 in' }],
  part: [
    { id: 'baffle', kind: 'baffle', driver: 'woofer' },
    { id: 'frame', kind: 'grille', driver: 'woofer' },
    { id: 'bezel', kind: 'bezel', size: '4 in' },
    { id: 'base', kind: 'base', size: '4 in' },
    { id: 'bare', kind: 'baffle' },
  ],
});

function openingOf(id: string): number | undefined {
  const row = answers.row('part', id);
  return row && partOpening(row, answers);
}

describe('partOpening', () => {
  // An inch is 25.4 mm exactly: 5 1/2 in are 139.7 mm, 7 in 177.8 mm.
  test.each([
    ['baffle', 'the driver’s cut-out', 139.7],
    ['frame', 'the driver’s frame', 177.8],
    ['bezel', 'its own size', 101.6],
    ['base', 'none of its own', undefined],
    ['bare', 'none without a driver', undefined],
  ])('the opening of a %s is %s', (id, _, mm) => {
    const found = openingOf(id);
    if (mm === undefined) expect(found).toBeUndefined();
    else expect(found).toBeCloseTo(mm, 9);
  });
});
