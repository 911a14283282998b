import { describe, expect, test } from 'vitest';
import { moneyText } from '../../../../extension/engine/estimate/money.ts';
import { tag, table } from '../../../../extension/engine/export/paper/html.ts';
import {
  lackingSentence,
  lackingWords,
  paperPdf,
} from '../../../../extension/engine/export/paper/paper-pdf.ts';
import { htmlPage } from '../../../../extension/engine/export/paper/paper.ts';
import { papers } from '../../../../extension/engine/export/paper/papers.ts';
import { paperOf } from '../../../helpers/paper-of.ts';
import { readPdf, type ReadPage } from '../../../helpers/read-pdf.ts';
import { doorPair, doorSnapshot } from '../../../helpers/sample-session.ts';

const door = doorSnapshot();
const ids = papers.map(({ id }) => id);

function words(pages: readonly ReadPage[]): string {
  return pages
    .flatMap(({ texts }) => texts.map(({ text }) => text))
    .join(' ')
    .replace(/\s+/g, ' ');
}

function rows(count: number, cell: (index: number) => string) {
  const lines = Array.from({ length: count }, (_, index) => [
    cell(index),
    `${String(index)}.00 USD`,
  ]);
  const main = tag('main', {}, tag('h2', {}, 'Rows'), table(['What', 'Money'], ['', 'n'], lines));
  return { kind: 'Test', title: 'Long', main };
}

describe('paperPdf', () => {
  test.each(ids)('%s has the words of its page, title and headings tagged as such', async (id) => {
    const { title, pages } = await readPdf(paperPdf(paperOf(id, door), 'letter').bytes);
    expect(title).toContain('Front door pair, 6 1/2 midbass and tweeter');
    const elements = pages.flatMap((page) => page.elements);
    const of = (role: string) => elements.filter((one) => one.role === role);
    expect(of('H1').map(({ text }) => text)).toEqual([
      'Front door pair, 6 1/2 midbass and tweeter',
    ]);
    const headings = [...htmlPage(paperOf(id, door)).matchAll(/<h2>([^<]*)<\/h2>/g)].map(
      ([, text]) => text,
    );
    expect(of('H2').map(({ text }) => text.replace(/\s+/g, ' '))).toEqual(headings);
    expect(words(pages)).toContain('Demo coupe');
  });

  test.each(['letter', 'a4'] as const)(
    'on %s nothing stands over the edge of the paper',
    async (sheet) => {
      const read = await Promise.all(
        ids.map((id) => readPdf(paperPdf(paperOf(id, door), sheet).bytes)),
      );
      const size = sheet === 'letter' ? [612, 792] : [595, 842];
      for (const { width, height, texts } of read.flatMap(({ pages }) => pages)) {
        expect([width, height].map(Math.round)).toEqual(size);
        const seen = texts.filter(({ text }) => text.trim() !== '');
        expect(Math.min(...seen.map(({ x }) => x))).toBeGreaterThan(36);
        expect(Math.max(...seen.map((one) => one.x + one.width))).toBeLessThan(width - 36);
        expect(Math.max(...seen.map(({ y }) => y))).toBeLessThan(height - 20);
      }
    },
  );

  test('the quote’s PDF has the money of the estimate, to the cent', async () => {
    const said = words((await readPdf(paperPdf(paperOf('quote', door), 'a4').bytes)).pages);
    const { price, tax, total, balance } = door.price.totals;
    for (const amount of [price, tax, total, balance])
      expect(said).toContain(moneyText(amount, 'USD'));
  });

  test('a long table goes on over six pages, with its head on each and every row once', async () => {
    const { pages } = await readPdf(
      paperPdf(
        rows(210, (index) => `Row ${String(index)}`),
        'letter',
      ).bytes,
    );
    expect(pages.length).toBeGreaterThanOrEqual(5);
    for (const page of pages) expect(words([page])).toContain('What');
    const all = words(pages);
    for (const index of [0, 41, 42, 209])
      expect(all.match(new RegExp(`Row ${String(index)} `, 'g'))).toHaveLength(1);
    expect(all).toContain(`1 / ${String(pages.length)}`);
  });

  test('long names are broken into lines within their column, beside the figures', async () => {
    const long = 'Waterproof-panel-board-with-a-name-that-does-not-end '.repeat(4);
    const { pages } = await readPdf(
      paperPdf(
        rows(3, () => long),
        'a4',
      ).bytes,
    );
    const money = pages[0]?.texts.filter(({ text }) => text.includes('USD')) ?? [];
    const names = pages[0]?.texts.filter(({ text }) => text.startsWith('Waterproof')) ?? [];
    expect(names.length).toBeGreaterThan(3);
    const edge = Math.min(...money.map(({ x }) => x));
    for (const { x, width } of names) expect(x + width).toBeLessThan(edge);
  });

  test.each(['letter', 'a4'] as const)(
    'on %s names of any length run neither into the column beside them nor over the edge',
    async (sheet) => {
      const names = [
        'with a name that was typed in full, down to the colour of the thread',
        'N'.repeat(90),
      ];
      let count = 0;
      const long = doorPair.replaceAll(
        /^(name|title) = "([^"]*)"$/gm,
        (_, key: string, name: string) => {
          count += 1;
          return `${key} = "${name} ${names[count % 2] ?? ''}"`;
        },
      );
      const job = doorSnapshot(long);
      for (const id of ids) {
        const { pages } = await readPdf(paperPdf(paperOf(id, job), sheet).bytes);
        for (const { texts, width } of pages) {
          const seen = texts.filter(({ text }) => text.trim() !== '');
          const inOrder = seen.toSorted((one, two) => one.y - two.y || one.x - two.x);
          inOrder.forEach((one, index) => {
            const before = inOrder[index - 1];
            expect(one.x + one.width).toBeLessThan(width - 36);
            if (before === undefined || Math.abs(before.y - one.y) > 0.5) return;
            expect([one.text, one.x - before.x - before.width > -0.5]).toEqual([one.text, true]);
          });
        }
      }
    },
  );

  test('a heading never stands alone at the foot of a page', async () => {
    for (const gap of [30, 33, 36, 39, 42]) {
      const lines = Array.from({ length: gap }, (_, index) =>
        tag('p', {}, `Line ${String(index)}`),
      );
      const below = table(['What'], [''], [['One'], ['Two', '']]);
      const main = tag(
        'main',
        {},
        lines,
        tag('h2', {}, 'Late heading'),
        tag('p', { class: 'small lead' }, 'Note'),
        below,
      );
      const { pages } = await readPdf(paperPdf({ kind: 'Test', title: 'Foot', main }, 'a4').bytes);
      const page = pages.find((one) => words([one]).includes('Late heading'));
      expect(words(page === undefined ? [] : [page])).toMatch(/Late heading Note What One/);
    }
  });

  test('the same job gives the same bytes', () => {
    expect(paperPdf(paperOf('mixcards', door), 'a4').bytes).toEqual(
      paperPdf(paperOf('mixcards', door), 'a4').bytes,
    );
  });

  test('letters that the fonts lack are told on the paper, and never garbled silently', async () => {
    const { bytes, lacking } = paperPdf(
      rows(1, () => 'Łukasz Я'),
      'a4',
    );
    expect([...lacking]).toEqual([
      ['Ł', 'L'],
      ['Я', '?'],
    ]);
    const said = words((await readPdf(bytes)).pages);
    expect(said).toContain('Lukasz ?');
    expect(said).toContain('U+0141 as L, U+042F as ?');
  });
});

describe('lackingWords', () => {
  test('says nothing where the fonts have all', () => {
    expect(lackingWords(new Map())).toBe('');
  });
});

describe('lackingSentence', () => {
  test('names the letters themselves and the way out', () => {
    expect(lackingSentence(new Map())).toBe('');
    expect(lackingSentence(new Map([['Ł', 'L']]))).toMatch(
      /Ł as L\. The same paper as HTML has them all\.$/,
    );
  });
});
