import { describe, expect, test } from 'vitest';
import { moneyText } from '../../../../extension/engine/estimate/money.ts';
import { papers } from '../../../../extension/engine/export/paper/papers.ts';
import {
  htmlPage,
  type PaperGround,
  type PaperSource,
} from '../../../../extension/engine/export/paper/paper.ts';
import { paperOf, wordsOf } from '../../../helpers/paper-of.ts';
import { charge, cost, jobWith, row, task } from '../../../helpers/priced-job.ts';
import { doorSnapshot } from '../../../helpers/sample-session.ts';

function pageOf(id: string, ground: PaperGround, source: PaperSource = {}): string {
  return htmlPage(paperOf(id, ground, source));
}

const door = doorSnapshot();
const ids = papers.map(({ id }) => id);

describe('papers', () => {
  test.each(ids)('%s is one whole page with tagged headings, its job and its date', (id) => {
    const page = pageOf(id, door, {
      commit: { hash: '0123456789abcdef', changed: true },
    });
    expect(page.startsWith('<!DOCTYPE html>\n<html lang="en">')).toBe(true);
    expect(page.match(/<h1>/g)).toHaveLength(1);
    expect(page).toMatch(/<h2>/);
    const words = wordsOf(page);
    expect(words).toContain('Front door pair, 6 1/2 midbass and tweeter');
    expect(words).toContain('2026-11-25');
    expect(words).toContain('Version of the file 0123456789, changed since');
  });

  test.each(ids)('%s runs nothing and fetches nothing, and opens and closes each tag', (id) => {
    const page = pageOf(id, door);
    expect(page).not.toMatch(/<script|<link|<img|\son\w+=|javascript:|@import/);
    // The one address is the name of SVG's own language.
    expect(page.replace(/xmlns(:\w+)?="[^"]*"/g, '')).not.toMatch(/https?:/);
    const open: string[] = [];
    for (const [, close, name = '', , self] of page.matchAll(
      /<(\/?)([a-zA-Z][\w]*)([^<>]*?)(\/?)>/g,
    )) {
      if (['meta', 'br'].includes(name) || self === '/') continue;
      if (close === '/') expect(open.pop()).toBe(name);
      else open.push(name);
    }
    expect(open).toEqual([]);
  });

  test.each(ids)('%s says what a person typed as text, never as markup', (id) => {
    const nasty = '<b onclick="x()">A & "B"</b>';
    const job = jobWith(
      { title: '<i>Title</i>', client: 'A & B', date: '2026-11-25' },
      row('panel', 'door', { name: nasty, hands: 'pair' }),
      row('part', 'coat', { name: nasty, kind: 'resin', use: '200 g', percent: '2 %' }),
      task('work', '60 min', { name: nasty }),
      charge('hours', 'labour', { name: nasty, rate: '50 USD/h' }),
    );
    const page = pageOf(id, job);
    expect(page).not.toContain('<b ');
    expect(page).not.toContain('<i>');
    expect(page).toContain('&lt;i&gt;Title&lt;/i&gt;');
  });

  test.each(ids)('%s of an empty job is still a page', (id) => {
    expect(wordsOf(pageOf(id, jobWith({})))).toContain('Test');
  });

  test('a page shown inside the editor admits its own style alone', () => {
    const page = htmlPage(paperOf('quote', door), 'abc');
    expect(page).toContain(`default-src 'none'; style-src 'nonce-abc'`);
    expect(page).toContain('<style nonce="abc">');
  });
});

describe('quote', () => {
  test('shows price, tax, total and payments as the estimate has them', () => {
    const words = wordsOf(pageOf('quote', door));
    const { totals } = door.price;
    for (const amount of [totals.price, totals.tax, totals.total, totals.balance]) {
      expect(words).toContain(moneyText(amount, 'USD'));
    }
    expect(words).toContain('Valid until 2026-12-25');
    expect(words).toContain('Covered with Automotive vinyl, 54 in');
  });

  test('shows no cost, no hour, no rate and no markup', () => {
    const words = wordsOf(pageOf('quote', door));
    const { totals } = door.price;
    for (const amount of [totals.materials, totals.labour, totals.cost, totals.earned]) {
      expect(words).not.toContain(moneyText(amount, 'USD'));
    }
    expect(words).not.toMatch(/markup|margin|contingency|labour|USD\/h|\d h\b|\d min\b/i);
  });

  test('what is guessed, brought by the client or left out is said', () => {
    const job = jobWith(
      { date: '2026-01-20', exclusions: 'Wiring behind the dash.', terms: 'Half before we begin.' },
      row('driver', 'mid', { name: 'Midbass', supply: 'client', sure: 'guess' }),
      row('measure', 'gap', { name: 'Room at the seal', value: '1 in', sure: 'guess' }),
      cost('goods', '10 USD'),
      task('work', '60 min'),
      charge('hours', 'labour', { rate: '50 USD/h' }),
    );
    const words = wordsOf(pageOf('quote', job));
    expect(words).toContain('Midbass (brought by you)');
    expect(words).toContain('Wiring behind the dash.');
    expect(words).toContain('the price may change with it: Room at the seal, Midbass');
    expect(words).toContain('Half before we begin.');
    expect(words).toContain('Valid until 2026-02-19');
    expect(words).not.toContain('Draft');
  });

  test('a price that lacks something is a draft', () => {
    expect(wordsOf(pageOf('quote', jobWith({}, cost('goods', '10 USD'))))).toContain('Draft');
  });
});

describe('shopping list', () => {
  test('lists every line of the bill with what is bought, and the money to bring', () => {
    const words = wordsOf(pageOf('shopping', door));
    for (const { name } of door.bill.lines) expect(words).toContain(name);
    expect(words).toContain('2 × 1 qt');
    expect(words).toContain(`Together ${moneyText(door.bill.totals.buy, 'USD')}`);
  });
});

describe('shop sheet', () => {
  test('has the order of work, every piece that is cut, rings, holes and steps', () => {
    const words = wordsOf(pageOf('shopsheet', door));
    expect(words).toMatch(/Measure and template the car 1 h 15 min Wed 2026-11-25 8:00/);
    expect(words).toMatch(/Left Right Blank Outline .* Front door base 1 1 26 in × 15 in/);
    expect(words).toMatch(/Midbass ring 1 1 8 in 2 in/);
    expect(words).toContain('Cut-out for Midbass');
    expect(words).toContain('How it is made');
  });

  test('says what to mind, with labels and data sheets first, before the first step', () => {
    const words = wordsOf(pageOf('shopsheet', door));
    expect(words).toContain('Labels, safety data sheets and local rules come before anything');
    expect(words).toMatch(
      /Dangers of this job: Peroxide catalyst; Styrene in polyester resin; .* Noise;/,
    );
    expect(words).toContain('Catalyst is an organic peroxide: goggles and gloves');
    expect(words).toContain('Before touching a door with an airbag');
    expect(words.match(/Board dust: extract it and wear a mask/g)).toHaveLength(1);
    expect(words.indexOf('Cautions')).toBeLessThan(words.indexOf('How it is made'));
  });
});

describe('mix cards', () => {
  test('has a card for each pot, with resin, catalyst and what they are for', () => {
    const page = pageOf('mixcards', door);
    expect(page.match(/<article/g)).toHaveLength(7);
    const words = wordsOf(page);
    expect(words).toContain('First coat, into the cloth: pot 2 of 4, left');
    expect(words).toMatch(/2 % of the resin’s weight/);
    expect(words).toContain('First coat, into the cloth: pot 3 of 4, right');
    expect(words).toContain('for planning only');
    expect(words).toContain('the label and the data sheet say comes first. Goggles and gloves');
  });
});
