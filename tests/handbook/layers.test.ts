import { describe, expect, test } from 'vitest';
import { openSession, showQuantity } from '../../extension/engine/index.ts';

const settings = { units: 'in', currency: 'USD' } as const;

function row(id: string, cells: readonly string[], order: number): string {
  return `[[part]]\nid = "${id}"\n\n${cells.join('\n')}\n\norder = ${String(order)}\n\n`;
}

/** What BUILD.UP of a base comes to in a job with these rows on it. */
function builtUp(rows: string): string {
  const job =
    'format = 1\n\n' +
    row('base', ['name = "Base"', 'kind = "base"', 'shape = "rect(20 in, 10 in)"'], 1000) +
    rows +
    row('sum', ['name = "Built up"', 'kind = "extra"', 'thickness = "=BUILD.UP(base)"'], 9000);
  const result = openSession(job).snapshot().workbook.row('part', 'sum')?.cell('thickness').result;
  if (result?.state !== 'value' || result.value.kind !== 'quantity') throw new Error('no answer');
  return showQuantity(result.value, settings).text;
}

describe('what lies on a board', () => {
  const skin = row('skin', ['kind = "skin"', 'on = "base"', 'thickness = "1/8 in"'], 2000);

  test('fibreglass and fleece on 1/4 in MDF are about 1/8 in (mustangforums.com), too thick at a door seal', () => {
    expect(builtUp(skin)).toBe('1/8 in');
  });

  test('two layers of 3/4 oz mat at 0.56 mm each lie on it (2.5 : 1, worked)', () => {
    const mat = row(
      'mat',
      ['kind = "mat"', 'on = "skin"', 'layers = 2', 'thickness = "1/32 in"'],
      3000,
    );
    expect(builtUp(skin + mat)).toBe('3/16 in');
  });

  test('mat behind the skin adds nothing to the face, unless its thickness is written (definition)', () => {
    const mat = row('mat', ['kind = "mat"', 'on = "skin"', 'layers = 3'], 3000);
    expect(builtUp(skin + mat)).toBe('1/8 in');
  });

  test('pieces lie side by side: four of them are no thicker than one (definition)', () => {
    const cover = ['kind = "vinyl"', 'on = "skin"', 'thickness = "1/16 in"'];
    expect(builtUp(skin + row('cover', cover, 4000))).toBe('3/16 in');
    expect(builtUp(skin + row('cover', [...cover, 'qty = 4'], 4000))).toBe('3/16 in');
  });
});
