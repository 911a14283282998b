import {
  coatWords,
  mixCaution,
  mixFacts,
  mixPlan,
  mixTotalText,
  shopTemperature,
  type Coat,
  type CoatWords,
  type Snapshot,
} from '../../engine/index.ts';
import type { MixCoatView, MixView } from '../../protocol/mix-view.ts';

function coatView(coat: Coat, words: CoatWords): MixCoatView {
  const { row, occurrence, name, resin, catalyst, warnings } = coat;
  return {
    id: row,
    occurrence,
    name,
    pots: words.pots,
    amounts: [
      { key: 'resin', what: resin, much: words.resin, also: words.resinVolume },
      { key: 'catalyst', what: catalyst, much: words.catalyst, also: words.percent },
    ],
    exactly: `Exactly ${words.exactly} of catalyst, ${words.drops}.`,
    measures: words.measures.map(({ by, amount, makes, error }) => ({
      key: by,
      amount,
      makes,
      error,
    })),
    life: words.life,
    warnings: warnings.map(({ text }) => text),
  };
}

/** The mix plan of the job: the same amounts and words that its cards are printed with. */
export function mixView(snapshot: Snapshot): MixView {
  const { settings, workbook, book } = snapshot;
  const plan = mixPlan(snapshot);
  const facts = mixFacts(workbook, book);
  const of = { plan, facts, settings };
  const nothing = plan.coats.length + plan.open.length === 0;
  const warm = shopTemperature(plan, settings);
  return {
    message: nothing
      ? 'This job mixes no resin yet. The kit “Lay-up” brings coats, or a row of the kind resin.'
      : '',
    facts: [
      { key: 'temperature', label: 'Shop temperature', value: warm === '' ? 'not said' : warm },
      {
        key: 'life',
        label: 'Pot life',
        value: plan.anchored ? 'by this shop’s gel test' : 'planning only',
      },
    ],
    anchored: plan.anchored,
    coats: plan.coats.map((coat) => coatView(coat, coatWords(coat, of))),
    open: plan.open.map(({ row, name, why }) => ({ id: row, occurrence: 0, name, why })),
    total: plan.coats.length === 0 ? '' : mixTotalText(plan, settings),
    caution: mixCaution,
  };
}
