import { describe, expect, test } from 'vitest';
import type { Kind } from '../../../extension/engine/book/book.ts';
import { provenanceOf } from '../../../extension/engine/book/provenance.ts';
import { bookOf } from '../../helpers/book-of.ts';

const demo = bookOf();

/** Cells that no figure of the trade stands in: names, links, words. */
const words = new Set(['name', 'form', 'unit', 'nap', 'source', 'supplier', 'substitutes', 'note']);

/** A text in quotes, a name, or a figure with its unit. */
const token =
  /"[^"]*"|[A-Za-z_][\w.]*|(\d+(?:\.\d+)?(?:[ /]\d+(?:\/\d+)?)?) ?(%|[A-Za-z]\w*(?:\/[A-Za-z]\w*)?)?/g;

/** Figures that say nothing of the trade: none, one, both sides, the whole of something. */
function isPlain(number: string, unit: string): boolean {
  if (Number(number) === 0) return true;
  if (unit === '%') return number === '100';
  return unit === '' && (number === '1' || number === '2');
}

/** Figures of the trade that a text of a kind reckons with. */
function figuresIn(text: string): readonly string[] {
  return [...text.matchAll(token)].flatMap(([whole, number, unit = '']) =>
    number === undefined || isPlain(number, unit) ? [] : [whole.trim()],
  );
}

function textsOf(kind: Kind): readonly string[] {
  return [
    ...kind.defaults.values(),
    ...kind.results.values(),
    ...kind.rules.map(({ formula }) => formula),
    ...kind.draws.flatMap(({ cells }) =>
      [...cells].filter(([key]) => key !== 'label' && key !== 'material').map(([, text]) => text),
    ),
  ];
}

describe('provenanceOf', () => {
  test('a figure without a source, or with one that names nothing, is refused', () => {
    for (const source of [undefined, '', 'a friend', 'published: ', 'published', 'measured']) {
      expect(provenanceOf(source), source).toBeUndefined();
    }
    expect(provenanceOf('published: data sheet, 2014')).toBe('published');
    expect(provenanceOf('common practice, no source')).toBe('common practice');
    expect(provenanceOf('shop must calibrate: weigh the pot')).toBe('shop must calibrate');
  });

  test('every constant of the demo book has one', () => {
    const lacking = [...demo.constants.values()].filter(
      ({ cells }) => provenanceOf(cells.get('source')) === undefined,
    );
    expect(demo.constants.size).toBeGreaterThan(60);
    expect(lacking.map(({ id }) => id)).toEqual([]);
  });

  test('every band of its charts has one', () => {
    expect(demo.bands.length).toBeGreaterThan(3);
    expect(demo.bands.filter(({ source }) => provenanceOf(source) === undefined)).toEqual([]);
  });

  test('every material with a figure of any sort has one', () => {
    const measured = [...demo.materials.values()].filter(({ cells }) =>
      [...cells].some(([key, text]) => !words.has(key) && /\d/.test(text)),
    );
    expect(measured.length).toBeGreaterThan(24);
    const lacking = measured.filter(({ cells }) => provenanceOf(cells.get('source')) === undefined);
    expect(lacking.map(({ id }) => id)).toEqual([]);
  });

  test('figures are found in what a kind reckons with, and names are not taken for them', () => {
    expect(figuresIn('=AND(percent >= 0.5%, percent <= 4%)')).toEqual(['0.5%', '4%']);
    expect(figuresIn('=MIX.BORDER(job.temperature) > 1dC')).toEqual(['1dC']);
    expect(figuresIn('1 1/4 in')).toEqual(['1 1/4 in']);
    expect(figuresIn('68 USD/h')).toEqual(['68 USD/h']);
    expect(figuresIn('=ROUNDUPTO(2*on.area/book.disc_area, 1) + draw.tube_89.use')).toEqual([]);
    expect(figuresIn('=IF(seat = top, book.baffle_thickness, 0in)')).toEqual([]);
  });

  test('every kind that reckons with a figure of its own has one', () => {
    const reckoning = [...demo.kinds.values()].filter((kind) =>
      textsOf(kind).some((text) => figuresIn(text).length > 0),
    );
    expect(reckoning.length).toBeGreaterThan(18);
    const lacking = reckoning.filter(({ source }) => provenanceOf(source) === undefined);
    expect(lacking.map((kind) => [kind.id, textsOf(kind).flatMap(figuresIn)])).toEqual([]);
  });

  test('every price is told to be invented', () => {
    for (const { cells } of demo.packs) expect(cells.get('source')).toBe('invented price');
  });
});
