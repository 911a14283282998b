import { mixPlan } from '../../estimate/mix/mix-plan.ts';
import type { Coat, MixPlan } from '../../estimate/mix/mix.ts';
import { mixFacts, type MixFacts } from '../../estimate/mix/mix-facts.ts';
import {
  coatWords,
  gramsText,
  millilitresText,
  mixCaution,
  mixTotalText,
  shopTemperature,
} from '../../estimate/mix/mix-words.ts';
import { percentText } from '../../units/percent-text.ts';
import { blankLine, list, nothing, section, table, tag, type Content, type Html } from './html.ts';
import {
  paperContent,
  type PaperContent,
  usualFacts,
  type PaperGround,
  type PaperSource,
} from './paper.ts';
import { panelNameOf, sidesOf } from './sides.ts';

/** What the coat is called where the job has panels of several names. */
function coatName({ row, name }: Coat, ground: PaperGround): string {
  const found = ground.workbook.row('part', row);
  const panel = found === undefined ? '' : panelNameOf(found, ground);
  return panel === '' ? name : `${panel}: ${name}`;
}

/** Which panel a pot is for: a side of a pair, else a number; empty where a pot serves several. */
function panelWords(number: number, coat: Coat, ground: PaperGround): string {
  const each = coat.pots / coat.panels;
  if (coat.panels < 2 || !Number.isInteger(each) || each < 1) return '';
  const at = Math.floor((number - 1) / each);
  const row = ground.workbook.row('part', coat.row);
  const sides = row === undefined ? undefined : sidesOf(row, 1, ground);
  const pair = coat.panels === 2 && sides?.left === 1 && sides.right === 1;
  if (pair) return at === 0 ? ', left' : ', right';
  return `, panel ${String(at + 1)}`;
}

function potNumber(number: number, coat: Coat, ground: PaperGround): string {
  return `pot ${String(number)} of ${String(coat.pots)}${panelWords(number, coat, ground)}`;
}

interface Around {
  readonly ground: PaperGround;
  readonly plan: MixPlan;
  readonly facts: MixFacts;
}

function card(coat: Coat, number: number, { ground, plan, facts }: Around): Html {
  const words = coatWords(coat, { plan, facts, settings: ground.settings });
  const others = words.measures.map(({ amount, makes }) => `${amount}, ${makes}`);
  return tag(
    'article',
    { class: 'card' },
    tag('h2', {}, `${coatName(coat, ground)}: ${potNumber(number, coat, ground)}`),
    tag(
      'div',
      { class: 'amounts' },
      tag(
        'div',
        {},
        tag('div', { class: 'what' }, coat.resin),
        tag('div', { class: 'much' }, words.resin),
        tag('div', { class: 'also' }, words.resinVolume),
      ),
      tag(
        'div',
        {},
        tag('div', { class: 'what' }, coat.catalyst),
        tag('div', { class: 'much' }, words.catalyst),
        tag('div', { class: 'also' }, words.percent),
      ),
    ),
    tag('p', {}, `Exactly ${words.exactly} of catalyst: ${others.join('; ')}.`),
    tag('p', {}, words.life),
    coat.warnings.length === 0
      ? nothing
      : tag('p', { class: 'warn' }, coat.warnings.map(({ text }) => text).join(' ')),
    tag('p', { class: 'small' }, mixCaution),
    tag(
      'p',
      {},
      blankLine('resin, really'),
      blankLine('catalyst, really'),
      blankLine('temperature, time'),
    ),
  );
}

function overview({ plan, ground }: Around): Html {
  const { settings } = ground;
  const rows = plan.coats.map((coat): readonly Content[] => [
    coatName(coat, ground),
    String(coat.pots),
    gramsText(coat.pot.resinGrams),
    gramsText(coat.grams),
    millilitresText(coat.volume),
    millilitresText(coat.catalystVolume),
    percentText(coat.share, 2),
  ]);
  const together = mixTotalText(plan, settings);
  return section(
    'Coats',
    table(
      ['Coat', 'Pots', 'Resin a pot', 'Resin', 'By volume', 'Catalyst', 'Percent'],
      ['', 'n', 'n', 'n', 'n', 'n', 'n'],
      rows,
    ),
    plan.coats.length === 0 ? nothing : tag('p', {}, together),
    list(plan.open.map(({ name, why }) => `${name} is not planned: ${why}`)),
  );
}

/** Mix cards: the coats at a glance, then a card for each pot, large enough to be read at the bench. */
export function mixCardsPaper(ground: PaperGround, source: PaperSource = {}): PaperContent {
  const plan = mixPlan(ground);
  const around = { ground, plan, facts: mixFacts(ground.workbook, ground.book) };
  const cards = plan.coats.flatMap((coat) =>
    Array.from({ length: coat.pots }, (_, index) => card(coat, index + 1, around)),
  );
  return paperContent(
    'Mix cards',
    {
      ground,
      source,
      facts: [
        ...usualFacts(ground),
        ['Shop temperature', shopTemperature(plan, ground.settings)],
        ['Pot life', plan.anchored ? 'by gel test' : 'planning only'],
      ],
    },
    plan.coats.length + plan.open.length === 0
      ? tag('p', {}, 'This job mixes no resin.')
      : overview(around),
    '\n',
    cards.length === 0 ? nothing : section('Cards', tag('div', { class: 'cards' }, ...cards)),
  );
}
