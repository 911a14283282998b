import { describe, expect, test } from 'vitest';
import { mixFacts } from '../../../../extension/engine/estimate/mix/mix-facts.ts';
import { mixPlan } from '../../../../extension/engine/estimate/mix/mix-plan.ts';
import {
  coatWords,
  gramsText,
  measureWords,
  millilitresText,
  mixTotalText,
  shopTemperature,
} from '../../../../extension/engine/estimate/mix/mix-words.ts';
import { doorSnapshot } from '../../../helpers/sample-session.ts';

const door = doorSnapshot();
const plan = mixPlan(door);
const facts = mixFacts(door.workbook, door.book);
const [first] = plan.coats;

describe('coatWords', () => {
  test('says pots, amounts, each tool’s rounding, and that the pot life is for planning', () => {
    if (first === undefined) throw new Error('The door pair has coats.');
    const words = coatWords(first, { plan, facts, settings: door.settings });
    expect(words.pots).toBe(
      `${String(first.pots)} pots, ${String(first.pots / first.panels)} a panel`,
    );
    expect(words.resin).toBe(`${String(first.pot.resinGrams)} g`);
    expect(words.percent).toBe('2 % of the resin’s weight');
    expect(words.measures.map(({ by }) => by)).toEqual(['scale', 'syringe', 'drops']);
    expect(words.measures.at(-1)?.makes).toContain('count your own drops first');
    expect(words.life).toContain('for planning only');
  });
});

describe('measureWords', () => {
  test('tells how far a tool is off: 4 g for 4.12 g is 2.9 % too little', () => {
    const one = {
      by: 'scale',
      count: 4,
      step: 1,
      grams: 4,
      share: 0.0194,
      error: -0.0291,
    } as const;
    expect(measureWords(one, { dropCounted: true })).toEqual({
      by: 'scale',
      amount: '4 g on the scale',
      makes: 'makes 1.94 %',
      error: '2.9 % too little',
    });
    expect(measureWords({ ...one, error: 0 }, { dropCounted: true }).error).toBe('exact');
  });
});

describe('gramsText', () => {
  test('a scale shows tenths', () => {
    expect(gramsText(12.34)).toBe('12.3 g');
  });
});

describe('millilitresText', () => {
  test('a thousand cubic millimetres are a millilitre', () => {
    expect(millilitresText(12_340)).toBe('12.3 ml');
  });
});

describe('mixTotalText', () => {
  test('names pots, resin and catalyst of the whole job', () => {
    expect(mixTotalText(plan, door.settings)).toMatch(
      /^Together \d+ pots: .+ of resin, .+ of catalyst, waste included\.$/,
    );
  });
});

describe('shopTemperature', () => {
  test('is empty where the job has none', () => {
    expect(shopTemperature({ ...plan, celsius: 25 }, door.settings)).toBe('77 degF');
    const { coats, open, anchored, totals } = plan;
    expect(shopTemperature({ coats, open, anchored, totals }, door.settings)).toBe('');
  });
});
