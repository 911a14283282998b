import { describe, expect, test } from 'vitest';
import {
  fontSigns,
  lackingSigns,
  pdfText,
  textWidth,
} from '../../../extension/engine/export/pdf-letters.ts';

describe('textWidth', () => {
  // Adobe's metrics of Helvetica and Helvetica-Bold: A is 667 and 722, a space 278 of a thousand.
  test('goes by the metrics of the font', () => {
    expect(textWidth('A A', 'F1', 10)).toBeCloseTo(16.12, 6);
    expect(textWidth('A', 'F2', 10)).toBeCloseTo(7.22, 6);
  });

  test('an accent makes no letter wider', () => {
    expect(textWidth('Éé', 'F1', 10)).toBeCloseTo(textWidth('Ee', 'F1', 10), 6);
  });
});

describe('fontSigns', () => {
  test('signs with plain words for them are spelled, accents that the font has stay', () => {
    expect(fontSigns('≈ 2 ⅜ in, café “x” – 5 €')).toBe('about 2 3/8 in, café “x” – 5 €');
  });

  test('a letter that the font lacks is its letter without the accent, else a question mark', () => {
    expect(fontSigns('Łódź Ż Я')).toBe('Lódz Z ?');
  });
});

describe('lackingSigns', () => {
  test('names each such letter once, with what stands in for it', () => {
    expect([...lackingSigns('Łódź Łan Я')]).toEqual([
      ['Ł', 'L'],
      ['ź', 'z'],
      ['Я', '?'],
    ]);
    expect(lackingSigns('Müller & Søn ≈ 3 “Å”').size).toBe(0);
  });
});

describe('pdfText', () => {
  test('brackets are escaped, others go by the number of the encoding', () => {
    expect(pdfText('a(b)\\é’')).toBe('(a\\(b\\)\\\\\\351\\222)');
  });
});
