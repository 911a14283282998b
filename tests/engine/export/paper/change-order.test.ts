import { describe, expect, test } from 'vitest';
import { openSession } from '../../../../extension/engine/index.ts';
import {
  changeOrderPaper,
  type ChangeOrder,
} from '../../../../extension/engine/export/paper/change-order.ts';
import { htmlPage } from '../../../../extension/engine/export/paper/paper.ts';
import { paperPdf } from '../../../../extension/engine/export/paper/paper-pdf.ts';
import { compareJobs } from '../../../../extension/engine/sharing/compare.ts';
import { readPdf } from '../../../helpers/read-pdf.ts';
import { charge, cost, row, task } from '../../../helpers/priced-job.ts';

function changed(before: string, after: string, copy: ChangeOrder['copy'] = 'client'): ChangeOrder {
  const compared = compareJobs(before, after);
  if (!compared.ok) throw new Error(compared.problem.message);
  return {
    before: openSession(before).snapshot(),
    after: openSession(after).snapshot(),
    compared: compared.value,
    since: 'the quote',
    copy,
  };
}

const head =
  'format = 1\n\n[job]\ntitle = "Door & dash"\nclient = "Demo client"\n\ndate = 2026-11-25\n\nunits = "in"\ncurrency = "USD"\n\n';

// 100 of goods and 2 h at 50, taxed at 10 %, half of it paid first: 200, 220 with tax.
const job = [
  head,
  cost('goods', '100 USD', { name: 'Goods' }),
  task('work', '120 min'),
  charge('hours', 'labour', { rate: '50 USD/h', taxed: 'yes' }),
  charge('tax', 'tax', { name: 'Sales tax', percent: '10 %' }),
  charge('first', 'deposit', { name: 'Deposit', percent: '50 %' }),
].join('');

const badge = row('part', 'badge', {
  name: 'Badge <A>',
  kind: 'extra',
  price: '40 USD',
  taxed: 'yes',
});
const longer = job.replace('120 min', '180 min') + badge;

function textOf(page: string): string {
  return page
    .slice(page.indexOf('<main>'))
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/\s+/g, ' ');
}

describe('changeOrderPaper', () => {
  test('price before, change and after, with tax and what is still to pay', () => {
    const text = textOf(htmlPage(changeOrderPaper(changed(job, longer))));
    expect(text).toContain('Before tax 200.00 USD +90.00 USD 290.00 USD');
    expect(text).toContain('Sales tax 20.00 USD +9.00 USD 29.00 USD');
    expect(text).toContain('Total 220.00 USD +99.00 USD 319.00 USD');
    expect(text).toContain('Deposit 110.00 USD +49.50 USD 159.50 USD');
    expect(text).toContain('makes the total 319.00 USD');
  });

  test('the client’s copy names what was added and shows neither hours nor the cost of a line', () => {
    const page = htmlPage(changeOrderPaper(changed(job, longer)));
    expect(page).toContain('Added: Badge &lt;A&gt;.');
    const text = textOf(page);
    expect(text).not.toContain('Hours');
    expect(text).not.toContain('40.00 USD');
    expect(text).not.toContain('180 min');
  });

  test('the shop’s copy has hours by phase and what is bought more', () => {
    const text = textOf(htmlPage(changeOrderPaper(changed(job, longer, 'shop'))));
    expect(text).toContain('Together 2 h +1 h 3 h');
    expect(text).toContain('Materials (shop copy)');
  });

  test('a change of nothing says so; a price that lacks a figure is a draft', () => {
    expect(textOf(htmlPage(changeOrderPaper(changed(job, job))))).toContain(
      'this is what was agreed to',
    );
    const open = job.replace("'100 USD'", "'=1in + 1qt'");
    expect(textOf(htmlPage(changeOrderPaper(changed(job, open))))).toContain('Not to be sent');
  });

  test.each(['client', 'shop'] as const)(
    'the PDF of the %s’s copy says what its page says, with the same headings, tagged',
    async (copy) => {
      const paper = changeOrderPaper(changed(job, longer, copy));
      const page = htmlPage(paper);
      const { title, pages } = await readPdf(paperPdf(paper, 'letter').bytes);
      expect(title).toBe('Change order: Door & dash');
      const elements = pages.flatMap((one) => one.elements);
      const tagged = (role: string) =>
        elements.filter((one) => one.role === role).map(({ text }) => text.replace(/\s+/g, ' '));
      expect(tagged('H1')).toEqual(['Door & dash']);
      expect(tagged('H2')).toEqual(
        [...page.matchAll(/<h2>([^<]*)<\/h2>/g)].map(([, text]) => text),
      );
      expect(tagged('TD')).toEqual(expect.arrayContaining(['+99.00 USD', '319.00 USD']));
      expect(tagged('H2').includes('Hours (shop copy)')).toBe(copy === 'shop');
    },
  );

  test('two currencies have no difference', () => {
    const euros = job.replaceAll('USD', 'EUR');
    expect(textOf(htmlPage(changeOrderPaper(changed(job, euros))))).toContain(
      'Before tax 200.00 USD 200.00 EUR',
    );
  });
});
