import { moneyText } from '../../estimate/money.ts';
import { nameOf, wordIn } from '../../estimate/cells.ts';
import { allPanels, panelCount } from '../../estimate/panels.ts';
import { isDue } from '../../estimate/price/price-lines.ts';
import { pricesByPanel } from '../../estimate/price/prices-by-panel.ts';
import { dateOf, dayOf } from '../../estimate/schedule/calendar.ts';
import type { AnsweredRow } from '../../workbook/answers.ts';
import { offeredOptions } from './offered-options.ts';
import { blankLine, list, nothing, section, tag, type Content, type Html } from './html.ts';
import {
  headText,
  paperContent,
  type PaperContent,
  usualFacts,
  type PaperGround,
  type PaperSource,
} from './paper.ts';

/** Days that a quote holds where the job does not say (common practice: 30 days on printed terms). */
const usualDays = 30;

function validUntil(ground: PaperGround): string {
  const said = headText(ground, 'valid_until');
  if (said !== '') return said;
  const day = dayOf(headText(ground, 'date'));
  return day === undefined ? '' : dateOf(day + usualDays);
}

function handsText(panel: AnsweredRow): string {
  const { left, right, alike } = panelCount(panel);
  if (alike > 0) return alike === 1 ? 'one' : `${String(alike)} alike`;
  if (left > 0 && right > 0) return left === 1 ? 'left and right' : `${String(left)} pairs`;
  const count = left + right;
  const side = left > 0 ? 'left' : 'right';
  return count === 1 ? `the ${side} one` : `${String(count)} ${side} ones`;
}

function unique(texts: readonly string[]): readonly string[] {
  return [...new Set(texts.filter((text) => text !== ''))];
}

function materialsOf(kinds: readonly string[], { workbook }: PaperGround): readonly string[] {
  const names = workbook
    .rows('part')
    .filter(({ kind, broken }) => !broken && kinds.includes(kind))
    .map((row) => {
      const material = workbook.row('material', wordIn(row, 'material'));
      return material === undefined ? '' : nameOf(material);
    });
  return unique(names);
}

const supplies: Readonly<Record<string, string>> = {
  client: ' (brought by you)',
  in_car: ' (from your car)',
};

/** What is done, from the rows: panels, drivers, covering. Costs and minutes are nobody's business. */
function scopeLines(ground: PaperGround): readonly string[] {
  const { workbook } = ground;
  const panels = workbook.rows('panel').filter(({ broken }) => !broken);
  const drivers = workbook.rows('driver').filter(({ broken }) => !broken);
  const covering = materialsOf(['vinyl'], ground);
  const grilles = workbook.rows('part').some(({ kind }) => kind === 'grille');
  const fitted = workbook.rows('task').some(({ kind }) => kind === 'fit');
  const made = panels.map((panel) => `${nameOf(panel)}: ${handsText(panel)}`);
  const held = drivers.map(
    (driver) => `${nameOf(driver)}${supplies[wordIn(driver, 'supply')] ?? ''}`,
  );
  return [
    ...(made.length === 0 ? [] : [`Panels: ${made.join('; ')}.`]),
    ...(held.length === 0 ? [] : [`For: ${held.join(', ')}.`]),
    ...(covering.length === 0 ? [] : [`Covered with ${covering.join(' and ')}.`]),
    ...(grilles ? ['Grilles made to match.'] : []),
    ...(fitted ? ['Fitted to the vehicle and tried.'] : []),
  ];
}

function scope(ground: PaperGround): Html {
  const said = headText(ground, 'scope');
  return section(
    'What is done',
    said === '' ? nothing : tag('p', {}, said),
    list(scopeLines(ground)),
  );
}

/** What was guessed and not yet measured: the price stands on it. */
function guesses({ workbook }: PaperGround): readonly string[] {
  return ['measure', 'driver'].flatMap((table) =>
    workbook
      .rows(table)
      .filter((row) => !row.broken && wordIn(row, 'sure') === 'guess')
      .map(nameOf),
  );
}

function exclusions(ground: PaperGround): Html {
  const said = headText(ground, 'exclusions');
  const guessed = guesses(ground);
  const lines: readonly Content[] = [
    said === '' ? 'Whatever is not named above. Changes are quoted before they are made.' : said,
    ...(guessed.length === 0
      ? []
      : [`Not measured yet, so the price may change with it: ${guessed.join(', ')}.`]),
  ];
  return section('What is not included', list(lines));
}

function priceRow(label: string, amount: string, look = ''): Html {
  return tag(
    'tr',
    look === '' ? {} : { class: look },
    tag('td', {}, label),
    tag('td', { class: 'n' }, amount),
  );
}

function priceTable(ground: PaperGround): Html {
  const { price } = ground;
  const { totals, currency } = price;
  const money = (minor: number): string => moneyText(minor, currency);
  const panels = pricesByPanel(ground).map(({ name, count, amount }) =>
    priceRow(count === 1 ? name : `${name}, ${String(count)} panels`, money(amount)),
  );
  const taxes = price.charges
    .filter(({ operation }) => operation === 'tax')
    .map(({ name, amount }) => priceRow(name, money(amount)));
  const body: readonly Html[] = [
    ...(panels.length === 0 ? [priceRow('The work described above', money(totals.price))] : panels),
    ...(taxes.length === 0
      ? []
      : [priceRow('Before tax', money(totals.price), 'strong'), ...taxes]),
    priceRow('Total', money(totals.total), 'strong'),
  ];
  const due = price.charges.filter(isDue).map(({ name, amount }) => priceRow(name, money(amount)));
  const payments =
    due.length === 0 ? [] : [...due, priceRow('Due at the end', money(totals.balance), 'strong')];
  return section(
    'Price',
    tag('table', {}, tag('tbody', {}, ...body)),
    payments.length === 0
      ? nothing
      : tag(
          'div',
          { class: 'avoid' },
          tag('h3', {}, 'Payments'),
          tag('table', {}, tag('tbody', {}, ...payments)),
        ),
  );
}

function draftNote({ price }: PaperGround): Html {
  if (price.state === 'whole') return nothing;
  return tag(
    'p',
    { class: 'warn' },
    'Draft: something in this price has no figure yet. Not to be sent.',
  );
}

function terms(ground: PaperGround): Html {
  const said = headText(ground, 'terms');
  return said === '' ? nothing : section('Terms', tag('p', {}, said));
}

function approval(ground: PaperGround): Html {
  const until = validUntil(ground);
  return tag(
    'section',
    { class: 'avoid' },
    tag('h2', {}, 'Approval'),
    tag('p', {}, `I accept this quote${until === '' ? '' : `, which holds until ${until}`}.`),
    blankLine('Name and signature', 'wide'),
    blankLine('Date'),
  );
}

/**
 * The quote for the client: scope, options, what is not included, price, tax, payments, a line to sign.
 * It shows no cost, no hour and no markup.
 */
export function quotePaper(ground: PaperGround, source: PaperSource = {}): PaperContent {
  const panels = ground.workbook.rows('panel').filter(({ broken }) => !broken);
  const count = panels.reduce((sum, panel) => sum + allPanels(panel), 0);
  const given = usualFacts(ground);
  const facts: readonly (readonly [string, string])[] = [
    ...given,
    ['Panels', count === 0 ? '' : String(count)],
    ['Valid until', validUntil(ground)],
  ];
  return paperContent(
    'Quote',
    { ground, source, facts },
    draftNote(ground),
    scope(ground),
    exclusions(ground),
    priceTable(ground),
    offeredOptions(ground, source),
    terms(ground),
    approval(ground),
  );
}
