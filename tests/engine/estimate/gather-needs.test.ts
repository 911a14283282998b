import { describe, expect, test } from 'vitest';
import { openGathering } from '../../../extension/engine/estimate/gather-needs.ts';
import type { WorkedRow } from '../../../extension/engine/estimate/outcomes.ts';
import { openOutcomes } from '../../../extension/engine/estimate/outcomes.ts';
import { readMaterial } from '../../../extension/engine/estimate/material.ts';
import { answersOver, fakeBook, fakeRow, inches } from '../../helpers/fake-answers.ts';

const materials = new Map(
  ['glue', 'filler'].map((id) => [
    id,
    readMaterial(fakeRow('material', { id, form: 'liquid' }), { packs: [], prices: [] }, inches),
  ]),
);

function part(id: string, material: string, use: string) {
  return fakeRow('part', { id, kind: 'amount', material, use });
}

const rows = [
  part('one', 'glue', '1 floz'),
  part('two', 'filler', '2 floz'),
  part('three', 'glue', '3 floz'),
];

function opened() {
  const outcomes = openOutcomes(fakeBook, inches);
  const needed = openGathering();
  return (list: typeof rows, changed: readonly string[]) => {
    const answers = answersOver(new Map([['part', list]]));
    return needed(outcomes.update(answers, materials, new Set(changed)));
  };
}

function askers(found: ReturnType<ReturnType<typeof opened>>) {
  return [...found].map(([id, { asked, missing }]) => [id, asked.map(({ row }) => row), missing]);
}

describe('openGathering', () => {
  test('needs stand by material, in the order of the rows', () => {
    expect(askers(opened()(rows, []))).toEqual([
      ['glue', ['one', 'three'], 0],
      ['filler', ['two'], 0],
    ]);
  });

  test('a need that is another takes its place, and the list of the other material stays', () => {
    const needs = opened();
    const first = needs(rows, []);
    const next = needs(rows.with(0, part('one', 'glue', '9 floz')), ['part/one']);
    expect(askers(next)).toEqual(askers(first));
    expect(next.get('glue')?.asked[0]?.use.base).toBeCloseTo(9 * 29573.52956, 3);
    expect(next.get('glue')?.asked[1]).toBe(first.get('glue')?.asked[1]);
    expect(next.get('filler')).toBe(first.get('filler'));
  });

  test('a row that turns to another material, or has no answer, is gathered anew', () => {
    const needs = opened();
    needs(rows, []);
    const turned = rows.with(0, part('one', 'filler', '1 floz'));
    expect(askers(needs(turned, ['part/one']))).toEqual([
      ['filler', ['one', 'two'], 0],
      ['glue', ['three'], 0],
    ]);
    expect(askers(needs(turned.with(2, part('three', 'glue', '?')), ['part/three']))).toEqual([
      ['filler', ['one', 'two'], 0],
      ['glue', [], 1],
    ]);
  });

  test('the same rows again are the same needs', () => {
    const outcomes = openOutcomes(fakeBook, inches);
    const needed = openGathering();
    const worked: { rows: readonly WorkedRow[]; changes: undefined } = {
      rows: outcomes.update(answersOver(new Map([['part', rows]])), materials, new Set()).rows,
      changes: undefined,
    };
    expect(needed(worked)).toBe(needed(worked));
  });
});
