import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJob, type ReadJob } from '../../extension/command-line/job.ts';
import { run } from '../../extension/command-line/run.ts';
import { headlineView } from '../../extension/host/views/headline-view.ts';
import { billView } from '../../extension/host/views/bill-view.ts';
import { tableRows } from '../../extension/host/views/job-view.ts';
import { priceView } from '../../extension/host/views/price-view.ts';
import { sheetContext } from '../../extension/host/views/sheet-context.ts';
import { sheetView } from '../../extension/host/views/sheet-view.ts';
import { charge, cost, row, task } from '../helpers/priced-job.ts';
import { amountIn, openedWorkbook } from '../helpers/read-workbook.ts';
import { demoBook, doorPair } from '../helpers/sample-session.ts';
import { testWorld } from '../helpers/test-world.ts';

interface Money {
  readonly minor: number;
  readonly currency: string;
}

/** As much of `estimate --json` as holds money. */
interface EstimateJson {
  readonly currency: string;
  readonly materials: readonly {
    readonly id: string;
    readonly buy: Money;
    readonly charge: Money;
    readonly rows: readonly {
      readonly table: string;
      readonly row: string;
      readonly charge: Money;
    }[];
  }[];
  readonly totals: { readonly buy: Money; readonly charge: Money };
  readonly charges: readonly {
    readonly id: string;
    readonly name: string;
    readonly does: string;
    readonly amount: Money;
    readonly complete: boolean;
  }[];
  readonly price: {
    readonly state: string;
    readonly price: Money;
    readonly total: Money;
    readonly balance: Money;
    readonly panels: readonly { readonly name: string; readonly price: Money }[];
  };
}

const files = (text: string): Readonly<Record<string, string>> => ({
  'jobs/job.paneljob': text,
  'jobs/books/demo-shop.panelbook': demoBook,
});

function output(text: string, ...args: readonly string[]): string {
  const world = testWorld(files(text));
  const [command = '', ...more] = args;
  run([command, 'jobs/job.paneljob', ...more], world);
  return world.written().out;
}

function opened(text: string): ReadJob {
  const job = readJob('jobs/job.paneljob', testWorld(files(text)));
  if (job === undefined) throw new Error('The job cannot be read');
  return job;
}

/** Money as it is written, in minor units; what is no money is none. */
function minorOf(text: string): number {
  const found = /([-−+]?)\s?(\d+)(?:\.(\d+))? [A-Z]{3}/.exec(text);
  if (found === null) return Number.NaN;
  const [, sign = '', whole = '', digits = ''] = found;
  return Number(`${whole}${digits}`) * (sign === '-' || sign === '−' ? -1 : 1);
}

/** Rows of all tables of a page: what stands in the first column, and the money in the last. */
function rowsOf(page: string): readonly (readonly [name: string, minor: number])[] {
  const found = [...page.matchAll(/<tr[^>]*>([\s\S]*?)<\/tr>/g)].map(([, cells = '']) =>
    [...cells.matchAll(/<t[hd][^>]*>([\s\S]*?)<\/t[hd]>/g)].map(([, text = '']) =>
      text
        .replaceAll(/<div[\s\S]*<\/div>|<[^>]+>/g, '')
        .replaceAll('&amp;', '&')
        .trim(),
    ),
  );
  return found
    .filter((cells) => cells.length > 1)
    .map((cells) => [cells.find((text) => text !== '') ?? '', minorOf(cells.at(-1) ?? '')] as const)
    .filter(([, minor]) => !Number.isNaN(minor));
}

/** Cells of a column of the grid, by the id of their row. */
function gridColumn(
  { snapshot }: ReadJob,
  table: string,
  key: string,
): ReadonlyMap<string, number> {
  const context = sheetContext(snapshot);
  const at = sheetView(table, context).columns.findIndex((column) => column.key === key);
  return new Map(
    tableRows(table, context).map(({ id, cells }) => [id, minorOf(cells[at]?.shown ?? '')]),
  );
}

function headlineAgrees({ snapshot }: ReadJob, told: EstimateJson): void {
  const { figures } = headlineView(snapshot, snapshot);
  const headline = new Map(figures.map(({ key, value }) => [key, minorOf(value)]));
  expect(headline.get('price')).toBe(told.price.price.minor);
  expect(headline.get('buy')).toBe(told.totals.buy.minor);
  expect(headline.get('charge')).toBe(told.totals.charge.minor);
}

function cellsAgree(job: ReadJob, told: EstimateJson): void {
  const charges = gridColumn(job, 'charge', 'charge');
  // A charge that cannot be reckoned, such as more than all of the price, shows nothing.
  for (const { id, amount, complete } of told.charges)
    expect([id, charges.get(id)]).toEqual([id, complete ? amount.minor : Number.NaN]);
  const cells = gridColumn(job, 'part', 'charge');
  const borne = new Map<string, number>();
  for (const { table, row: id, charge: money } of told.materials.flatMap(({ rows }) => rows)) {
    if (table === 'part') borne.set(id, (borne.get(id) ?? 0) + money.minor);
  }
  for (const [id, minor] of borne) {
    const shown = cells.get(id) ?? Number.NaN;
    // A part that costs nothing shows nothing.
    expect([id, Number.isNaN(shown) ? 0 : shown]).toEqual([id, minor]);
  }
}

function panesAgree({ snapshot }: ReadJob, told: EstimateJson): void {
  const bill = billView(snapshot, snapshot, undefined);
  const shown = new Map(bill.groups.flatMap(({ lines }) => lines).map((line) => [line.id, line]));
  for (const { id, buy, charge: money } of told.materials) {
    const { buyCost = '', charge: charged = '' } = shown.get(id) ?? {};
    expect([id, minorOf(buyCost), minorOf(charged)]).toEqual([id, buy.minor, money.minor]);
  }
  const total = (told.price.total.minor / 100).toFixed(2);
  expect(JSON.stringify(priceView(snapshot, snapshot))).toContain(`${total} ${told.currency}`);
}

function paperAgrees(text: string, told: EstimateJson): void {
  const quote = new Map(rowsOf(output(text, 'quote')));
  expect(quote.get('Total')).toBe(told.price.total.minor);
  const taxes = told.charges.filter(({ does }) => does === 'tax');
  if (taxes.length > 0) expect(quote.get('Before tax')).toBe(told.price.price.minor);
  for (const { name, amount } of taxes) expect(quote.get(name)).toBe(amount.minor);
  const due = told.charges.filter(({ does }) => does === 'deposit' || does === 'stage');
  for (const { name, amount } of due) expect(quote.get(name)).toBe(amount.minor);
  if (due.length > 0) expect(quote.get('Due at the end')).toBe(told.price.balance.minor);
  const panels = told.price.panels.reduce((sum, { price }) => sum + price.minor, 0);
  if (told.price.panels.length > 0) expect(panels).toBe(told.price.price.minor);
  const list = output(text, 'shopping');
  expect(minorOf(/Together ([^<]*)\./.exec(list)?.[1] ?? '')).toBe(told.totals.buy.minor);
  const bought = rowsOf(list).reduce((sum, [, minor]) => sum + minor, 0);
  expect(bought).toBe(told.totals.buy.minor);
}

function workbookAgrees({ snapshot }: ReadJob, told: EstimateJson): void {
  const read = openedWorkbook(snapshot);
  for (const { id, amount } of told.charges) {
    expect([id, amountIn(read, 'Price', id, 5)]).toEqual([id, amount.minor]);
  }
  expect(amountIn(read, 'Price', 'Total', 5)).toBe(told.price.total.minor);
  expect(amountIn(read, 'Bill', 'Total', 4)).toBe(told.totals.buy.minor);
  expect(amountIn(read, 'Bill', 'Total', 5)).toBe(told.totals.charge.minor);
}

/** Grid, paper, program and workbook say the same of a job, to the cent. */
function expectOneMoney(text: string): void {
  const told = JSON.parse(output(text, 'estimate', '--json')) as EstimateJson;
  const job = opened(text);
  headlineAgrees(job, told);
  cellsAgree(job, told);
  panesAgree(job, told);
  paperAgrees(text, told);
  workbookAgrees(job, told);
}

const numbers =
  /^(price|rate|percent|minutes|qty|waste|layers|tilt|use|value|depth) = ("?)(\d+(?:\.\d+)?)(?=[^\d/.\n]*"?$)/gm;

/** The text with some of its numbers made larger or smaller; others stay as they are. */
function edited(text: string, edits: readonly (readonly [at: number, factor: number])[]): string {
  const count = [...text.matchAll(numbers)].length;
  const factors = new Map(edits.map(([at, factor]) => [at % count, factor]));
  let index = -1;
  return text.replaceAll(numbers, (whole, key: string, quote: string, number: string) => {
    index += 1;
    const factor = factors.get(index);
    if (factor === undefined) return whole;
    const made = Number(number) * factor;
    const digits = key === 'layers' || key === 'qty' ? 0 : 2;
    return `${key} = ${quote}${String(Number(made.toFixed(digits)))}`;
  });
}

const drawnEdits = fc.array(fc.tuple(fc.nat(), fc.double({ min: 0.2, max: 3, noNaN: true })), {
  minLength: 1,
  maxLength: 8,
});

describe('money is the same in the grid, on paper, in the program and in the workbook', () => {
  test('of the front-door pair, whatever numbers of it are changed', { timeout: 300_000 }, () => {
    expect([...doorPair.matchAll(numbers)].length).toBeGreaterThan(25);
    fc.assert(
      fc.property(drawnEdits, fc.boolean(), (edits, stock) => {
        const text = edited(doorPair, edits);
        expectOneMoney(
          stock ? text.replace('units = "in"', 'units = "in"\nuse_stock = "yes"') : text,
        );
      }),
      { numRuns: 6, examples: [[[[0, 1]], false]] },
    );
  });

  // Shares that leave halves of a cent everywhere: each line is rounded once, and only once.
  test('of small jobs with odd cents and odd shares', { timeout: 300_000 }, () => {
    const cents = fc.integer({ min: 1, max: 99_999 });
    const share = fc.integer({ min: 0, max: 3999 });
    const panels = fc.integer({ min: 1, max: 7 });
    fc.assert(
      fc.property(fc.tuple(cents, cents, share, share, panels), (drawn) => {
        const [goods, rate, one, two, count] = drawn;
        const amount = (minor: number): string => (minor / 100).toFixed(2);
        expectOneMoney(
          [
            'format = 1\n\n[job]\ntitle = "Test"\n\nunits = "in"\ncurrency = "USD"\n\n',
            row('panel', 'a', { name: 'First', hands: 'alike', count: String(count) }),
            row('panel', 'b', { name: 'Second', hands: 'pair' }),
            cost('goods', `${amount(goods)} USD`, { panel: 'a' }),
            cost('more', `${amount(rate)} USD`, { panel: 'b', taxed: 'no' }),
            task('hour', `${String((one % 600) + 1)} min`),
            charge('hours', 'labour', { rate: `${amount(rate)} USD/h`, taxed: 'yes' }),
            charge('gain', 'markup', { percent: `${String(two / 100)} %` }),
            charge('spare', 'contingency', { percent: `${String(one / 300)} %` }),
            charge('off', 'discount', { percent: `${String(two / 400)} %` }),
            charge('state', 'tax', { name: 'State tax', percent: `${String(one / 200)} %` }),
            charge('town', 'tax', { name: 'Town tax', percent: `${String(two / 500)} %` }),
            charge('first', 'deposit', { name: 'Deposit', percent: '33.33 %' }),
          ].join(''),
        );
      }),
      { numRuns: 12 },
    );
  });
});
