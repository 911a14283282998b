import { describe, expect, test } from 'vitest';
import { more, only, row, told } from '../../../helpers/told-traps.ts';

describe('markup against margin', () => {
  const markup = (percent: string, name = 'On materials'): string =>
    more(row('charge', 'own', { name, kind: 'markup', percent }));

  // Fabric Architecture, 2018: a 20 % markup on 100 leaves 16.67 %; for 20 % margin the price is 125.
  test('a markup named as a margin is told with the other figure', () => {
    const found = only(markup('20 %', 'Margin on materials'));
    expect(found).toMatchObject({ code: 'markup-or-margin', at: 'charge/own.percent' });
    expect(found.message).toContain('a markup of 20 % leaves a margin of 16.7 %');
    expect(found.message).toContain('the markup is 25 %');
  });

  test('a markup above 60 % is told; one of 60 % is not', () => {
    expect(only(markup('66.7 %')).message).toContain('margin of 40 %');
    expect(told(markup('60 %'))).toEqual([]);
  });

  test('a margin named as a markup, or a whole one, is told', () => {
    const margin = (percent: string, name = 'Margin'): string =>
      more(row('charge', 'own', { name, kind: 'margin', percent }));
    expect(only(margin('20 %', 'Mark-up')).message).toContain(
      'a margin of 20 % is a markup of 25 %',
    );
    expect(only(margin('100 %'))).toMatchObject({ code: 'margin-whole', severity: 'error' });
    expect(told(margin('30 %'))).toEqual([]);
  });
});
