import { mixPlan } from '../../estimate/mix/mix-plan.ts';
import type { Coat, Measuring, MixPlan } from '../../estimate/mix/mix.ts';
import { mixFacts, type MixFacts } from '../../estimate/mix/mix-facts.ts';
import { bestMeasure } from '../../estimate/mix/pots.ts';
import { mass, plain, temperature, time, volume, type Dimension } from '../../units/dimension.ts';
import { showQuantity } from '../../units/show.ts';
import {
  blankLine,
  list,
  made,
  nothing,
  section,
  table,
  tag,
  type Content,
  type Html,
} from './html.ts';
import { paperPage, usualFacts, type PaperGround, type PaperSource } from './paper.ts';

/** What a percentage is of, as a card says it. */
const basisWords = {
  by_mass: 'of the resin’s weight',
  by_volume: 'of the resin’s volume',
  ml_per_100g: 'ml for 100 g of resin',
} as const;

function grams(base: number): string {
  return `${String(Math.round(base * 10) / 10)} g`;
}

function millilitres(base: number): string {
  return `${String(Math.round(base / 100) / 10)} ml`;
}

function percentText(share: number, settings: PaperGround['settings']): string {
  const base = Math.round(share * 1e4) / 1e4;
  return showQuantity({ base, dimension: plain }, settings, '%').text;
}

/** What one way of measuring comes to: `4 g on the scale (2 %)`. */
function measureText(one: Measuring, settings: PaperGround['settings']): string {
  const makes = `makes ${percentText(one.share, settings)}`;
  if (one.by === 'scale') return `${grams(one.count * one.step)} on the scale, ${makes}`;
  if (one.by === 'syringe') return `${millilitres(one.count * one.step)} by the syringe, ${makes}`;
  return `${String(one.count)} drops, ${makes}`;
}

function catalystAmount(coat: Coat, facts: MixFacts): string {
  const best = bestMeasure(coat.pot, facts);
  if (best?.by === 'syringe') return millilitres(best.count * best.step);
  if (best?.by === 'drops') return `${String(best.count)} drops`;
  return grams((best?.count ?? 0) * (best?.step ?? 0));
}

function lifeText(coat: Coat, plan: MixPlan, ground: PaperGround): string {
  const shown = (minutes: number): string =>
    showQuantity({ base: Math.round(minutes), dimension: time }, ground.settings, 'min').text;
  if (coat.potLife === undefined) return `About ${shown(coat.spreading)} to stir and spread.`;
  const basis = plan.anchored
    ? 'by this shop’s gel test'
    : 'for planning only: no gel test of this shop stands behind it';
  return `Gels after about ${shown(coat.potLife)} (${basis}). About ${shown(coat.spreading)} to stir and spread.`;
}

function potNumber(number: number, coat: Coat): string {
  const each = coat.pots / coat.panels;
  const panel =
    coat.panels > 1 && Number.isInteger(each) && each >= 1
      ? `, panel ${String(Math.floor((number - 1) / each) + 1)}`
      : '';
  return `pot ${String(number)} of ${String(coat.pots)}${panel}`;
}

interface Around {
  readonly ground: PaperGround;
  readonly plan: MixPlan;
  readonly facts: MixFacts;
}

function card(coat: Coat, number: number, { ground, plan, facts }: Around): Html {
  const { settings } = ground;
  const { pot } = coat;
  const dropWords = facts.dropCounted ? '' : ' (count your own drops first)';
  const others = pot.measures.map((one) =>
    one.by === 'drops' ? `${measureText(one, settings)}${dropWords}` : measureText(one, settings),
  );
  return tag(
    'article',
    { class: 'card' },
    tag('h2', {}, `${coat.name}: ${potNumber(number, coat)}`),
    tag(
      'div',
      { class: 'amounts' },
      tag(
        'div',
        {},
        tag('div', { class: 'what' }, coat.resin),
        tag('div', { class: 'much' }, grams(pot.resinGrams)),
        tag('div', { class: 'also' }, `about ${millilitres(pot.resinVolume)}`),
      ),
      tag(
        'div',
        {},
        tag('div', { class: 'what' }, coat.catalyst),
        tag('div', { class: 'much' }, catalystAmount(coat, facts)),
        tag(
          'div',
          { class: 'also' },
          `${percentText(coat.share, settings)} ${basisWords[coat.basis]}`,
        ),
      ),
    ),
    tag(
      'p',
      {},
      `Exactly ${grams(pot.catalystGrams)} or ${millilitres(pot.catalystVolume)} of catalyst: ${others.join('; ')}.`,
    ),
    tag('p', {}, lifeText(coat, plan, ground)),
    coat.warnings.length === 0
      ? nothing
      : tag('p', { class: 'warn' }, coat.warnings.map(({ text }) => text).join(' ')),
    tag(
      'p',
      { class: 'small' },
      'Goggles and gloves before the bottle is opened. Never near promoter, heat or flame. Stir a full minute, scrape the sides. What is left: outdoors, spread out, until it is cold.',
    ),
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
    coat.name,
    String(coat.pots),
    grams(coat.pot.resinGrams),
    grams(coat.grams),
    millilitres(coat.volume),
    millilitres(coat.catalystVolume),
    percentText(coat.share, settings),
  ]);
  const shown = (base: number, dimension: Dimension): string =>
    showQuantity({ base, dimension }, settings).text;
  const { totals } = plan;
  const together = `Together ${String(totals.pots)} pots: ${shown(totals.resinGrams, mass)} (${shown(totals.resinVolume, volume)}) of resin, ${shown(totals.catalystVolume, volume)} (${shown(totals.catalystGrams, mass)}) of catalyst, waste included.`;
  return section(
    'Coats',
    table(
      ['Coat', 'Pots', 'Resin a pot', 'Resin', '', 'Catalyst', 'Percent'],
      ['', 'n', 'n', 'n', 'n', 'n', 'n'],
      rows,
    ),
    plan.coats.length === 0 ? nothing : tag('p', {}, together),
    list(plan.open.map(({ name, why }) => `${name} is not planned: ${why}`)),
  );
}

/** Mix cards: the coats at a glance, then a card for each pot, large enough to be read at the bench. */
export function mixCardsPaper(ground: PaperGround, source: PaperSource = {}): string {
  const plan = mixPlan(ground);
  const around = { ground, plan, facts: mixFacts(ground.workbook, ground.book) };
  const celsius =
    plan.celsius === undefined
      ? ''
      : showQuantity({ base: plan.celsius, dimension: temperature }, ground.settings).text;
  const cards = plan.coats.flatMap((coat) =>
    Array.from({ length: coat.pots }, (_, index) => card(coat, index + 1, around)),
  );
  return paperPage(
    'Mix cards',
    {
      ground,
      source,
      facts: [
        ...usualFacts(ground),
        ['Shop temperature', celsius],
        ['Pot life', plan.anchored ? 'by gel test' : 'planning only'],
      ],
    },
    plan.coats.length + plan.open.length === 0
      ? tag('p', {}, 'This job mixes no resin.')
      : overview(around),
    made('\n'),
    cards.length === 0 ? nothing : section('Cards', tag('div', { class: 'cards' }, ...cards)),
  );
}
