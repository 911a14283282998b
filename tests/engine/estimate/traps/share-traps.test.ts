import { describe, expect, test } from 'vitest';
import { more, only, row, told } from '../../../helpers/told-traps.ts';

const glue = (waste: string): string =>
  more(row('material', 'own_glue', { name: 'Own glue', form: 'liquid', waste }));

describe('a percentage without its sign', () => {
  test('is told as what it counts, with the percentage that may be meant', () => {
    const found = only(glue('15'));
    expect(found).toMatchObject({
      code: 'share-bare',
      severity: 'warning',
      at: 'material/own_glue.waste',
      fixes: ['15 %'],
    });
    expect(found.message).toContain('15 counts as 1500 %');
  });

  test('a share below one, and a percentage, are none', () => {
    for (const waste of ['0.15', '15 %', '150 %']) expect(told(glue(waste)), waste).toEqual([]);
  });
});
