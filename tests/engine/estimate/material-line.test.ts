import { describe, expect, test } from 'vitest';
import { makeBill } from '../../../extension/engine/estimate/estimate.ts';
import { materialLine } from '../../../extension/engine/estimate/material-line.ts';
import { readMaterial } from '../../../extension/engine/estimate/material.ts';
import {
  fakeAnswers,
  fakeBook,
  fakeRow,
  inches,
  type FakeRow,
} from '../../helpers/fake-answers.ts';

/** The line and problems of a job whose parts all take one material. */
function billOf(material: FakeRow, packs: readonly FakeRow[], parts: readonly FakeRow[]) {
  const job = {
    material: [{ id: 'it', name: 'Stuff', ...material }],
    pack: packs.map((pack, index) => ({ id: `p${String(index)}`, material: 'it', ...pack })),
    part: parts.map((part, index) => ({
      id: `r${String(index)}`,
      kind: 'base',
      material: 'it',
      ...part,
    })),
  };
  const { lines, problems } = makeBill(fakeAnswers(job), fakeBook, inches);
  const [line] = lines;
  if (line === undefined) throw new Error('there is a line');
  return { line, problems };
}

const sheet = { form: 'sheet', length: '48 in', width: '24 in' };
const whole = { holds: '1 sheet', price: '13.50 USD' };

describe('materialLine', () => {
  test('boards are bought by what fits on them, not by their area alone', () => {
    const two = billOf(sheet, [whole], [{ length: '30 in', width: '14 in', qty: '2' }]);
    expect(two.line.packs.map(({ count }) => count)).toEqual([2]);
    const small = billOf(sheet, [whole], [{ length: '20 in', width: '14 in', qty: '2' }]);
    expect(small.line.packs.map(({ count }) => count)).toEqual([1]);
  });

  test('boards asked for by area are approximate too: nobody has laid them out', () => {
    const { line } = billOf(sheet, [whole], [{ kind: 'amount', use: '3 sqft' }]);
    expect([line.approximate, line.buy]).toEqual([true, 1350]);
  });

  test('the smallest stock that takes the blank is bought', () => {
    const packs = [whole, { holds: '4 sqft', price: '8 USD' }];
    const fits = billOf(sheet, packs, [{ length: '20 in', width: '20 in' }]);
    expect(fits.line.buy).toBe(800);
    const long = billOf(sheet, packs, [{ length: '40 in', width: '5 in' }]);
    expect(long.line.buy).toBe(1350);
  });

  test('a blank larger than every stock is a problem of its row; the rest stands', () => {
    const { line, problems } = billOf(
      sheet,
      [whole],
      [
        { length: '50 in', width: '30 in' },
        { length: '20 in', width: '10 in' },
      ],
    );
    expect(problems.map(({ code, place }) => [code, place?.row])).toEqual([
      ['blank-too-large', 'r0'],
    ]);
    expect([line.buy, line.complete, line.rows.length]).toEqual([1350, false, 1]);
  });

  test('a blank wider than the bolt is a problem of its row', () => {
    const { problems } = billOf(
      { form: 'roll', width: '54 in' },
      [{ holds: '1 yd', price: '20 USD' }],
      [{ length: '60 in', width: '56 in' }],
    );
    expect(problems[0]?.message).toBe(
      'r0: the blank 60 in × 56 in does not lie across Stuff, which is 54 in wide: turn it, make it of two, or pick a wider one.',
    );
  });

  test('lengths come out of whole stock: three of 20 in need two sticks of 48', () => {
    const stick = { form: 'strip', length: '48 in' };
    const { line } = billOf(
      stick,
      [{ holds: '1 each', price: '2 USD' }],
      [{ kind: 'shim', use: '20 in', qty: '3' }],
    );
    expect(line.packs.map(({ count }) => count)).toEqual([2]);
    const long = billOf(
      stick,
      [{ holds: '1 each', price: '2 USD' }],
      [{ kind: 'shim', use: '50 in' }],
    );
    expect(long.problems.map(({ code }) => code)).toEqual(['piece-too-long']);
  });

  test('cloth that must be whole is never bought short', () => {
    const { line } = billOf(
      { form: 'roll', width: '54 in' },
      [{ holds: '1 yd', price: '20 USD' }],
      [{ length: '36.2 in', width: '40 in' }],
    );
    expect(line.packs.map(({ count }) => count)).toEqual([2]);
  });

  test('waste on cloth lengthens what is laid out', () => {
    const { line } = billOf(
      { form: 'roll', width: '54 in', waste: '10 %', nap: 'one_way' },
      [{ step: '0.25 yd', rate: '20 USD/yd' }],
      [{ length: '30 in', width: '40 in' }],
    );
    expect(line.need?.base).toBeCloseTo(33 * 25.4, 6);
    expect(line.steps.map(({ text }) => text)).toEqual([
      '1 of 30 in × 40 in',
      'laid across 54 in: 30 in, 74.1 % of it becomes parts',
      'less than that is impossible',
      '+ 10 % waste',
      'needed: 0.9167 yd',
      '1 yd, cut in steps of 0.25 yd',
      'bought: 1 yd for 20.00 USD',
      'charged: the packs, 20.00 USD',
    ]);
  });

  // Derived: 24 × 30 in panel, 1/4 in edge, 1 + 1 in all round; two of them off 54 in goods.
  test('two blanks of 28 1/2 × 34 1/2 in off a 54 in bolt are 57 in: 1 3/4 yd', () => {
    const { line } = billOf(
      { form: 'roll', width: '54 in' },
      [{ step: '0.25 yd', rate: '28 USD/yd' }],
      [{ length: '34.5 in', width: '28.5 in', qty: '2' }],
    );
    expect(line.need?.base).toBeCloseTo(57 * 25.4, 6);
    expect([line.packs[0]?.cut?.base, line.buy]).toEqual([1600.2, 4900]);
  });

  test('wire cut by the foot is not called tight', () => {
    const wire = billOf(
      { form: 'strip' },
      [{ step: '1 ft', rate: '0.45 USD/ft' }],
      [{ kind: 'amount', use: '24 ft' }],
    );
    expect(wire.line.tight).toBeUndefined();
    expect(wire.line.packs[0]?.cut?.base).toBeCloseTo(24 * 304.8, 6);
  });

  test('a need without an answer leaves its line incomplete', () => {
    const { line, problems } = billOf(
      { form: 'piece' },
      [{ holds: '10 each', price: '5 USD' }],
      [
        { kind: 'amount', qty: '?' },
        { kind: 'amount', qty: '3' },
      ],
    );
    expect([line.complete, line.buy]).toEqual([false, 500]);
    expect(problems.map(({ code }) => code)).toEqual(['need-unanswered']);
  });

  test('nothing asked for is nothing bought', () => {
    const material = readMaterial(
      fakeRow('material', { id: 'it', form: 'liquid' }),
      {
        packs: [fakeRow('pack', { id: 'p', material: 'it', holds: '1 qt', price: '5 USD' })],
        prices: [],
      },
      inches,
    );
    const { line } = materialLine(
      { material, asked: [], locks: [], missing: 1, slack: 0.01, settings: inches },
      { heavy: undefined, quick: new Map() },
    );
    expect([line.buy, line.charge, line.complete, line.packs.length]).toEqual([0, 0, false, 0]);
  });
});
