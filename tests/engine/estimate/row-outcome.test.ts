import { describe, expect, test } from 'vitest';
import { readMaterial } from '../../../extension/engine/estimate/material.ts';
import { rowOutcome } from '../../../extension/engine/estimate/row-outcome.ts';
import { fakeBook, fakeRow, inches, type FakeRow } from '../../helpers/fake-answers.ts';

const panel = fakeRow('panel', { id: 'door', hands: 'pair' });
const materials = new Map(
  [
    { id: 'glue', form: 'liquid', waste: '10 %' },
    { id: 'brad', form: 'piece' },
    { id: 'can', form: 'aerosol' },
    { id: 'board', form: 'sheet' },
  ].map((cells) => [
    cells.id,
    readMaterial(fakeRow('material', cells), { packs: [], prices: [] }, inches),
  ]),
);

function outcomeOf(cells: FakeRow, on: typeof panel | undefined = panel) {
  const row = fakeRow('part', { id: 'row', kind: 'amount', ...cells });
  const kind = fakeBook.kinds.get(row.kind);
  if (kind === undefined) throw new Error('the kind is known');
  const material = (id: string) => materials.get(id);
  return rowOutcome({ row, kind, panel: on, material, settings: inches }).outcome;
}

function codes(cells: FakeRow) {
  return outcomeOf(cells).problems.map(({ code, place }) => `${code} ${place?.column ?? ''}`);
}

describe('rowOutcome', () => {
  test('use × pieces × panels × (1 + waste) is what a row needs', () => {
    const [asked] = outcomeOf({ material: 'glue', use: '2 floz', qty: '3' }).asked;
    const floz = (231 * 25.4 ** 3) / 128;
    expect((asked?.need.base ?? 0) / floz).toBeCloseTo(2 * 3 * 2 * 1.1, 9);
  });

  test("the row's own waste goes before the material's", () => {
    const [asked] = outcomeOf({ material: 'glue', use: '2 floz', waste: '0 %' }).asked;
    expect(asked?.waste).toBe(0);
  });

  test('counted goods are one for each piece where use is blank', () => {
    expect(outcomeOf({ material: 'brad', qty: '14' }).asked[0]?.need.base).toBe(28);
  });

  test('a row of the job is needed once', () => {
    expect(outcomeOf({ material: 'brad', per: 'job' }).asked[0]?.need.base).toBe(1);
    const loose = fakeRow('part', { id: 'row', kind: 'amount', material: 'brad' });
    const kind = fakeBook.kinds.get('amount');
    if (kind === undefined) throw new Error('the kind is known');
    const material = (id: string) => materials.get(id);
    const input = { row: loose, kind, panel: undefined, material, settings: inches };
    const { outcome } = rowOutcome(input);
    expect(outcome.asked[0]?.need.base).toBe(1);
  });

  test('a draw is asked for by every piece of its row, with its own waste', () => {
    const drawn = {
      material: 'brad',
      qty: '2',
      draws: 'glue',
      'draw.glue.material': 'glue',
      'draw.glue.use': '1 floz',
      'draw.glue.qty': '3',
      'draw.glue.waste': '50 %',
    };
    const [, asked] = outcomeOf(drawn).asked;
    expect([asked?.draw, asked?.pieces, asked?.panels, asked?.waste]).toEqual(['glue', 6, 2, 0.5]);
  });

  test('a draw may be for the job while its row is for each panel', () => {
    const drawn = {
      material: 'brad',
      draws: 'pot',
      'draw.pot.material': 'can',
      'draw.pot.per': 'job',
    };
    expect(outcomeOf(drawn).asked.map(({ panels }) => panels)).toEqual([2, 1]);
  });

  test('none switches a material or a draw off', () => {
    const off = {
      material: 'none',
      draws: 'glue',
      'draw.glue.material': 'none',
      'draw.glue.use': '1 floz',
    };
    expect(outcomeOf(off)).toMatchObject({ asked: [], loose: 0, problems: [] });
  });

  test('a draw with neither material nor use is not used', () => {
    expect(outcomeOf({ material: 'brad', draws: 'glue' }).problems).toEqual([]);
  });

  test('what is missing is told at its cell', () => {
    expect(codes({})).toEqual(['material-blank material']);
    expect(codes({ material: 'gold' })).toEqual(['material-unknown material']);
    expect(codes({ material: 'glue' })).toEqual(['need-blank use']);
    expect(codes({ material: 'glue', use: '?' })).toEqual(['need-unanswered use']);
    expect(codes({ material: 'glue', use: '-2 floz' })).toEqual(['need-negative use']);
    expect(codes({ material: 'brad', qty: '-2' })).toEqual(['need-negative qty']);
    expect(codes({ material: 'brad', qty: '2 in' })).toEqual(['need-unanswered qty']);
    expect(codes({ material: 'brad', waste: '-5 %' })).toEqual(['need-negative waste']);
    expect(codes({ material: 'glue', use: '2 g' })).toEqual(['property-missing use']);
    expect(codes({ material: 'glue', use: '3 min' })).toEqual(['unit-unfitting use']);
    expect(codes({ material: 'can', use: '2 roll' })).toEqual(['count-word-differs use']);
    expect(codes({ kind: 'base', material: 'board' })).toEqual(['need-blank length']);
    expect(codes({ kind: 'base', material: 'board', length: '3 in' })).toEqual([
      'need-blank width',
    ]);
    expect(codes({ kind: 'base', material: 'board', length: '3 in', width: '2 g' })).toEqual([
      'need-unanswered width',
    ]);
    expect(codes({ material: 'brad', draws: 'x', 'draw.x.use': '1 floz' })).toEqual([
      'material-blank draw.x.material',
    ]);
  });

  test('a need of weight names what it would take to buy it by volume', () => {
    expect(outcomeOf({ material: 'glue', use: '100 g' }).problems[0]?.message).toBe(
      'glue has no density; needed to buy 220 g by the fluid ounce.',
    );
  });

  test('cans are cans, also in the plural', () => {
    expect(outcomeOf({ material: 'can', use: '2 cans' }).asked[0]?.need).toMatchObject({
      base: 4,
      unit: 'can',
    });
  });

  test('a one-off cost is its price, once for the job unless it says per panel', () => {
    const freight = { kind: 'extra', price: '18.50 USD', per: 'job' };
    expect(outcomeOf(freight).own?.cost).toBe(1850);
    expect(outcomeOf({ ...freight, per: 'panel' }).own?.cost).toBe(3700);
    expect(codes({ kind: 'extra' })).toEqual(['price-blank price']);
  });

  test('a kind that takes nothing asks for nothing', () => {
    expect(outcomeOf({ kind: 'existing' })).toMatchObject({ asked: [], loose: 0, problems: [] });
  });

  test('a baffle holds its driver, other rows only belong to it', () => {
    const size = { material: 'board', length: '7 in', width: '7 in', driver: 'mid' };
    expect(outcomeOf({ kind: 'baffle', ...size, qty: '2' }).holds).toEqual({
      driver: 'mid',
      count: 4,
      words: '2 × 2 panels',
    });
    expect(outcomeOf({ kind: 'ring', ...size }).holds).toBeUndefined();
  });
});
