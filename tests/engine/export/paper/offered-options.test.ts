import { describe, expect, test } from 'vitest';
import { nothing } from '../../../../extension/engine/export/paper/html.ts';
import { offeredOptions } from '../../../../extension/engine/export/paper/offered-options.ts';
import { htmlPage } from '../../../../extension/engine/export/paper/paper.ts';
import { paperOf } from '../../../helpers/paper-of.ts';
import { cost, pricedJob } from '../../../helpers/priced-job.ts';

const snapshot = pricedJob(cost('goods', '100 USD'));

describe('offeredOptions', () => {
  test('the client sees names and differences of price', () => {
    const options = [
      { name: 'Cloth', note: 'instead of vinyl', change: -2500 },
      { name: 'Better driver', note: '', change: 11000 },
      { name: 'Grey', note: '', change: 0 },
    ];
    const page = htmlPage(paperOf('quote', snapshot, { options }));
    expect(page).toContain('Cloth: instead of vinyl');
    expect(page).toContain('−25.00 USD');
    expect(page).toContain('+110.00 USD');
    expect(page).toContain('same price');
  });

  test('without options there is no such part', () => {
    expect(offeredOptions(snapshot, {})).toBe(nothing);
  });
});
